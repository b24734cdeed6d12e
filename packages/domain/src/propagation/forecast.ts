import { MAX_UNITS, requireWhole } from '../kernel/input.ts';
import { type BatchUnit, isUnitOnePlant } from './words.ts';

export interface YieldLeft {
  unit: BatchUnit;
  /** Plants that were expected when somebody last judged it, cautiously or usually. */
  expectedUnits: number;
  /** Plants potted since. */
  pottedPlants: number;
  standingUnits: number;
}

/**
 * Plants that may still be expected of a batch: what was judged its yield, less what has been potted since, and never more than
 * stand where a unit is one plant. Nothing when nothing stands. Throws InputError for numbers that are negative or no whole ones.
 */
export function yieldLeft({ unit, expectedUnits, pottedPlants, standingUnits }: YieldLeft): number {
  requireWhole('expectedUnits', expectedUnits, 0, MAX_UNITS);
  requireWhole('pottedPlants', pottedPlants, 0, MAX_UNITS);
  requireWhole('standingUnits', standingUnits, 0, MAX_UNITS);
  if (standingUnits === 0) return 0;
  const left = Math.max(0, expectedUnits - pottedPlants);
  return isUnitOnePlant(unit) ? Math.min(left, standingUnits) : left;
}
