import { errorKind } from './kind.ts';

export const sourcesErrors = {
  /** A source gives only plants of its own kind. */
  'source-of-other-plant': errorKind<{ source: string; plant: string }>('refusal', 409),
  'source-retired': errorKind<{ source: string }>('refusal', 409),
  /** The mother lot named came from this very source. */
  'source-in-itself': errorKind<{ lot: string }>('refusal', 409),
  'mother-lot-missing': errorKind('input', 400),
} as const;
