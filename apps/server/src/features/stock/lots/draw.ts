import { drawUnits, type PlaceBalance } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { LotFacts } from './store.ts';

/** Takes units from where the lot stands, or refuses with the numbers beside the field. */
export function drawFromLot(
  lot: Pick<LotFacts, 'code' | 'balances'>,
  units: number,
  placeId: string | null | undefined,
  field = 'units',
): PlaceBalance[] {
  const drawing = drawUnits(lot.balances, units, placeId);
  if ('drawn' in drawing)
    return drawing.drawn.map(({ placeId: place, units: taken }) => ({ placeId: place, units: taken }));
  if (drawing.refused === 'not-enough-units')
    refuse('not-enough-units', { wanted: drawing.wanted, available: drawing.available, of: lot.code }, field);
  const places = lot.balances.map(({ placeId: place, placeCode, units: there }) => ({
    placeId: place,
    code: placeCode,
    units: there,
  }));
  return refuse('which-place', { of: lot.code, places }, 'placeId');
}
