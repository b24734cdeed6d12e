import { type BatchForecast, type BatchUnit, isUnitOnePlant } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { requireSince } from '../../../stock/ledger/post.ts';

interface Expected {
  targetContainerId: string | null;
  cautiousUnits: number;
  usualUnits?: number | null | undefined;
  readyOn?: string | null | undefined;
}

/** The forecast as an entry keeps it: no more plants than stand where a unit is one, usually as many as cautiously or more, and ready after the start. */
export function forecastFor(
  batch: { code: string; unit: BatchUnit; startedOn: string; standing: number },
  expected: Expected,
): BatchForecast {
  const { cautiousUnits, targetContainerId } = expected;
  const usualUnits = expected.usualUnits ?? cautiousUnits;
  const readyOn = expected.readyOn ?? null;
  const { standing, unit, code } = batch;
  if (readyOn) requireSince(readyOn, batch.startedOn, 'readyOn');
  if (isUnitOnePlant(unit) && cautiousUnits > standing)
    refuse('cautious-over-units', { cautious: cautiousUnits, standing, unit, batch: code }, 'cautiousUnits');
  if (isUnitOnePlant(unit) && usualUnits > standing)
    refuse('usual-over-units', { usual: usualUnits, standing, unit, batch: code }, 'usualUnits');
  if (usualUnits < cautiousUnits)
    refuse('usual-below-cautious', { usual: usualUnits, cautious: cautiousUnits }, 'usualUnits');
  return { targetContainerId, cautiousUnits, usualUnits, readyOn };
}
