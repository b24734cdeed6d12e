/**
 * Why supply of an accepted item does not fill a line, with the units it concerns. `not-grown`: nothing of the item is there at all.
 * `promised`: held for lines that were promised earlier. The others say what keeps a lot or batch from serving this line.
 */
export const SHORTAGE_REASONS = ['not-grown', 'promised', 'not-ready', 'past-plant-by', 'held', 'seed-zone', 'not-wild-type', 'treated', 'released-by-hand'] as const;
export type ShortageReasonCode = (typeof SHORTAGE_REASONS)[number];

export interface ShortageReason {
  reason: ShortageReasonCode;
  units: number;
  /** The lots and batches meant, by code, at most ten. */
  codes: string[];
  /** For `not-ready` the first day on which some would be; for `past-plant-by` the last day on which some still could go. */
  day: string | null;
}
