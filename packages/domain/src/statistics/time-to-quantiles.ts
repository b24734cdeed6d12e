import { requireShare } from '../kernel/input.ts';
import { SURVIVAL_ROUNDING, survivalCurve } from './survival-curve.ts';

export interface TimeToObservation {
  /** From the start until it was reached, or until today where it is still awaited; 0 or more. */
  days: number;
  /** false: not reached yet, or given up; counted as long as it was watched. */
  reached: boolean;
  /** Batches or plants that this row speaks of; 1 unless given. */
  units?: number;
}

/**
 * The days by which each of the shares (0 to 1) had reached what is awaited, in the order of the shares: 0.5 is the median, 0.1 and 0.9 the
 * tenth and ninetieth percentile; 0 for share 0. What is unfinished counts for as long as it was watched, by the Kaplan–Meier curve; leaving it out would make
 * everything look faster than it is. null where the curve never gets that far.
 * Throws InputError naming `shares` outside 0 to 1, and `days` or `units` as survivalCurve does.
 */
export function timeToQuantiles(
  observations: readonly TimeToObservation[],
  shares: readonly number[],
): (number | null)[] {
  for (const share of shares) requireShare('shares', share);
  const { steps } = survivalCurve(observations.map(({ days, reached, units }) => ({ days, died: reached, units })));
  return shares.map((share) =>
    share === 0 ? 0 : (steps.find((step) => 1 - step.survival >= share - SURVIVAL_ROUNDING)?.days ?? null),
  );
}
