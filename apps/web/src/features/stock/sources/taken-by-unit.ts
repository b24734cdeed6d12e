import type { BatchUnit } from '@rootclock/domain';

/** What batches began with, unit by unit: cuttings and cells are not added up. */
export function takenByUnit(
  batches: readonly { unit: BatchUnit; startedUnits: number }[],
): { unit: BatchUnit; units: number }[] {
  const units = [...new Set(batches.map(({ unit }) => unit))];
  return units.map((unit) => ({
    unit,
    units: batches.reduce((sum, batch) => sum + (batch.unit === unit ? batch.startedUnits : 0), 0),
  }));
}
