import { InputError } from '../kernel/input.ts';

export interface PlaceBalance {
  placeId: string;
  units: number;
}

/** What is taken where, or why it cannot be taken. */
export type Drawing =
  | { drawn: PlaceBalance[] }
  | { refused: 'not-enough-units'; wanted: number; available: number }
  | { refused: 'which-place'; places: PlaceBalance[] };

/**
 * Takes whole units from where a lot or batch stands.
 * With a place named only that place is drawn on. With none named, a lot at one place is drawn on there, all of a lot is drawn everywhere,
 * and part of a lot that stands in several places is refused, since only the grower knows which plants were taken.
 * @throws InputError when `wanted` is not a positive whole number.
 */
export function drawUnits(balances: readonly PlaceBalance[], wanted: number, placeId?: string | null): Drawing {
  if (!Number.isSafeInteger(wanted) || wanted <= 0) throw new InputError('units', 'must be a whole number above 0');
  const live = balances.filter((s) => s.units > 0);
  const here = placeId ? live.filter((s) => s.placeId === placeId) : live;
  const available = here.reduce((sum, s) => sum + s.units, 0);
  if (wanted > available) return { refused: 'not-enough-units', wanted, available };
  if (wanted === available) return { drawn: here };
  const [only, ...others] = here;
  if (!only || others.length > 0) return { refused: 'which-place', places: here };
  return { drawn: [{ placeId: only.placeId, units: wanted }] };
}

/**
 * Whole units for a share of a lot, rounded to the nearest unit and at least one.
 * @param percent above 0 up to 100.
 */
export function unitsOfPercent(units: number, percent: number): number {
  if (!(percent > 0 && percent <= 100)) throw new InputError('percent', 'must lie above 0 and up to 100');
  return Math.min(units, Math.max(1, Math.round((units * percent) / 100)));
}
