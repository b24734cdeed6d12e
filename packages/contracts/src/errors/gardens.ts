import { errorKind } from './kind.ts';

export const gardensErrors = {
  /** Plants stand staged for the order: they are planted, handed over or returned first, or a place is named for them. */
  'plants-are-staged': errorKind<{ order: string; units: number }>('refusal', 409),
  /** Nobody has checked whether these root balls hold: sent again with `confirmed` they are pulled all the same. */
  'root-ball-not-checked': errorKind<{ lots: string[] }>('refusal', 422),
  'not-enough-staged': errorKind<{ wanted: number; staged: number; of: string }>('refusal', 409),
  /** The line accepts neither this plant in this container nor an alternative like it. */
  'not-accepted': errorKind<{ lot: string; accepted: string[] }>('refusal', 409),
  'no-quarantine-place': errorKind('refusal', 422),
  'cause-needed': errorKind('input', 400),
  /** Orders are finished or cancelled before a client's data are blanked. */
  'orders-are-open': errorKind<{ orders: string[] }>('refusal', 409),
} as const;
