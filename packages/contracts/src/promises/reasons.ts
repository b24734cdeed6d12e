import { REFUSAL_REASONS } from '@rootclock/domain';

/** What keeps a lot or batch from serving a line whose item it is. `held` also stands for plants at a quarantine place. */
export const UNFIT_REASONS = [...REFUSAL_REASONS, 'not-ready', 'past-plant-by', 'released-by-hand'] as const;
export type UnfitReason = (typeof UNFIT_REASONS)[number];

/**
 * Why a line is short, with the units each reason concerns. `not-grown`: nothing of its items is there. `promised`: other lines hold it.
 * `no-whole-tray`: plants in trays that fill none, of a lot or of what is asked.
 */
export const SHORTAGE_REASONS = ['not-grown', 'promised', 'no-whole-tray', ...UNFIT_REASONS] as const;
export type ShortageReasonCode = (typeof SHORTAGE_REASONS)[number];

export interface ShortageReason {
  reason: ShortageReasonCode;
  units: number;
  /** The lots and batches meant, or for `promised` the orders that hold them, by code, at most ten. */
  codes: string[];
  /** For `not-ready` the first day on which some would be; for `past-plant-by` the last day on which some still could go. */
  day: string | null;
}
