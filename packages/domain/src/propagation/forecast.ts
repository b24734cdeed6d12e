import { MAX_UNITS, requireWhole } from '../kernel/input.ts';
import { type BatchUnit, isUnitOnePlant } from './words.ts';

/**
 * Plants that may still be promised from a batch: what was judged a cautious yield, less what has been potted since, and never more than
 * stand where a unit is one plant. Nothing when nothing stands. Throws InputError for numbers that are negative or no whole ones.
 */
export function cautiousLeft({ unit, cautiousUnits, pottedPlants, standingUnits }: { unit: BatchUnit; cautiousUnits: number; pottedPlants: number; standingUnits: number }): number {
  requireWhole('cautiousUnits', cautiousUnits, 0, MAX_UNITS);
  requireWhole('pottedPlants', pottedPlants, 0, MAX_UNITS);
  requireWhole('standingUnits', standingUnits, 0, MAX_UNITS);
  if (standingUnits === 0) return 0;
  const left = Math.max(0, cautiousUnits - pottedPlants);
  return isUnitOnePlant(unit) ? Math.min(left, standingUnits) : left;
}
