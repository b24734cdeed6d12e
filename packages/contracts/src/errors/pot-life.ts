import { errorKind } from './kind.ts';

export const potLifeErrors = {
  /** A rule of the same basis reaches the same plants: with two of them nobody could say which counts. */
  'rule-exists': errorKind<{ ruleId: string }>('refusal', 409),
  'rule-retired': errorKind('refusal', 409),
  'window-retired': errorKind('refusal', 409),
  'window-exists': errorKind<{ opensMd: string; closesMd: string }>('refusal', 409),
} as const;
