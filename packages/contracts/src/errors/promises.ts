import type { UnfitReason } from '../promises/reasons.ts';
import { errorKind } from './kind.ts';

/** A line that a change would leave shorter than it is. */
export interface LineShortening {
  lineId: string;
  orderId: string;
  orderCode: string;
  clientName: string;
  scientificName: string;
  containerCode: string;
  filledNow: number;
  filledThen: number;
  shorterBy: number;
}

export const promisesErrors = {
  /** Sent again with these as `acceptedShortages` it passes, unless the real ones have become worse. */
  'would-shorten': errorKind<{ lines: LineShortening[] }>('refusal', 409),
  /** The lot or batch cannot serve the line: another item, not ready, past its plant-by day, held, or against a condition. */
  'does-not-serve': errorKind<{ supply: string; reasons: (UnfitReason | 'not-accepted')[] }>('refusal', 409),
  /** So many lines take so many of the same items that no plan can be made while a person waits. */
  'too-many-lines-share': errorKind<{ lines: number; plants: number }>('refusal', 422),
  /** What takes long to work out was overtaken by others' entries, or takes longer than a person waits: the same command may be sent again. */
  'promises-moved': errorKind('retry', 503),
  'nothing-reserved': errorKind<{ supply: string }>('refusal', 409),
  /** Pinned units of other lines hold what is there; those must be unpinned first. */
  'pinned-by-others': errorKind<{ supply: string; wanted: number; available: number }>('refusal', 409),
  'more-than-line-needs': errorKind<{ wanted: number; open: number }>('refusal', 409),
  /** The line is whole again, or somebody set the loss aside before. */
  'loss-is-settled': errorKind<{ order: string; how: 'whole' | 'set-aside'; on: string }>('refusal', 409),
  /** So many of the line have been pulled or planted already; it cannot become smaller than that. */
  'below-what-happened': errorKind<{ least: number; staged: number; delivered: number }>('refusal', 409),
} as const;
