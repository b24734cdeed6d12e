import { errorKind } from './kind.ts';

export const sourcesErrors = {
  /** A source gives only plants of its own kind. */
  'source-of-other-plant': errorKind<{ source: string; plant: string }>('refusal', 409),
  'source-retired': errorKind<{ source: string }>('refusal', 409),
  /** The mother lot named came from this very source. */
  'source-in-itself': errorKind<{ lot: string }>('refusal', 409),
  'mother-lot-missing': errorKind('input', 400),
  /** Grams; the sentence names what is left. */
  'more-seed-than-stored': errorKind<{ source: string; wanted: number; left: number }>('refusal', 409),
  'no-seed-stored': errorKind<{ source: string }>('refusal', 409),
  /** Plants and beds give cuttings and divisions, which nobody weighs. */
  'source-holds-no-seed': errorKind<{ source: string; kind: string }>('refusal', 409),
  /** It cannot become a source without seed while seed of it lies in the store. */
  'source-has-seed': errorKind<{ source: string; left: number }>('refusal', 409),
  'cleaned-over-raw': errorKind<{ raw: number; cleaned: number }>('input', 400),
  'blend-of-different-plants': errorKind<{ source: string; plant: string; wanted: string }>('refusal', 409),
  'blend-needs-parts': errorKind<{ parts: number }>('input', 400),
  'blend-part-twice': errorKind<{ source: string }>('input', 400),
  'blend-in-use': errorKind<{ source: string; batches: number }>('refusal', 409),
  /** More sound seeds than the replicate had. */
  'replicate-over-seeds': errorKind<{ sound: number; seeds: number }>('input', 400),
  /** Shares 0 to 1 that together pass the whole. */
  'shares-over-whole': errorKind<{ germinated: number; hard: number; dormant: number }>('input', 400),
  'test-already-withdrawn': errorKind('refusal', 409),
  /** A ledger entry used it, and taking that back brings the seed back. */
  'seed-of-entry': errorKind<{ source: string; grams: number }>('refusal', 409),
  /** What came in has been used since, so it cannot be taken back. */
  'seed-has-gone': errorKind<{ source: string; grams: number; left: number }>('refusal', 409),
} as const;
