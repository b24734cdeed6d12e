import { errorKind } from './kind.ts';

/** Refusals of taking in and of places. */
export const stockInErrors = {
  'place-not-empty': errorKind<{ place: string; units: number; lots: number; batches: number }>('refusal', 409),
  'place-has-places': errorKind<{ place: string; places: number }>('refusal', 409),
  'place-in-itself': errorKind<{ place: string }>('input', 400),
  'place-retired': errorKind<{ place: string }>('refusal', 409),
  /** A closing that was set may be made longer but not shorter, except by opening the place with a reason. */
  'closed-for-longer': errorKind<{ place: string; until: string; reason: string }>('refusal', 409),
  'closing-is-past': errorKind<{ until: string }>('input', 400),
  'place-not-closed': errorKind<{ place: string }>('refusal', 409),
  /** Plants cannot stand there since a day after they were counted or arrived. */
  'day-after-intake': errorKind<{ day: string; intakeOn: string }>('input', 400),
} as const;
