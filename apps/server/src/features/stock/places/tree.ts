import * as z from 'zod/mini';
import { placeFields } from './store.ts';

/** A place with what stands at it, as it comes from the database. */
export const placeFlat = z.strictObject({
  ...placeFields.shape,
  placeId: z.string(),
  edition: z.number(),
  retired: z.boolean(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
  lots: z.number(),
  units: z.number(),
  batches: z.number(),
});
export type PlaceFlat = z.infer<typeof placeFlat>;

export interface PlaceRow extends PlaceFlat {
  /** 0 for what lies in no other place. */
  depth: number;
  /** Plants at the place and in all that lies in it. */
  unitsWithin: number;
  /** The place whose closing closes this one: itself, or one in which it lies. Null while it is open. */
  closedBy: { placeId: string; code: string } | null;
}

/** B2 comes before B10. */
const byCode = new Intl.Collator('en', { numeric: true });

/**
 * The places as a tree read from top to bottom. A place is closed with the one in which it lies, until the later of both times.
 * A place whose parent is not among the rows (retired, say) stands at the top rather than nowhere.
 */
export function placeTree(places: readonly PlaceFlat[], now: Date): PlaceRow[] {
  const known = new Set(places.map((place) => place.placeId));
  const inside = new Map<string | null, PlaceFlat[]>();
  for (const place of places.toSorted((a, b) => byCode.compare(a.code, b.code))) {
    const parent = place.parentId !== null && known.has(place.parentId) ? place.parentId : null;
    inside.set(parent, [...(inside.get(parent) ?? []), place]);
  }
  const rows: PlaceRow[] = [];
  const visit = (place: PlaceFlat, depth: number, above: PlaceRow | null): number => {
    const row: PlaceRow = { ...place, depth, unitsWithin: place.units, ...closing(place, above, now) };
    rows.push(row);
    for (const child of inside.get(place.placeId) ?? []) row.unitsWithin += visit(child, depth + 1, row);
    return row.unitsWithin;
  };
  for (const top of inside.get(null) ?? []) visit(top, 0, null);
  return rows;
}

function closing(
  place: PlaceFlat,
  above: PlaceRow | null,
  now: Date,
): Pick<PlaceRow, 'closedUntilAt' | 'closedReason' | 'closedBy'> {
  const own = place.closedUntilAt !== null && new Date(place.closedUntilAt) > now ? place.closedUntilAt : null;
  const theirs = above?.closedBy ? above.closedUntilAt : null;
  if (theirs !== null && above && (own === null || new Date(theirs) > new Date(own)))
    return { closedUntilAt: theirs, closedReason: above.closedReason, closedBy: above.closedBy };
  if (own === null) return { closedUntilAt: null, closedReason: null, closedBy: null };
  return {
    closedUntilAt: own,
    closedReason: place.closedReason,
    closedBy: { placeId: place.placeId, code: place.code },
  };
}
