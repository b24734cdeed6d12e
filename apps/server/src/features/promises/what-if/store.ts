import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

const stagedLot = z.strictObject({ lotId: z.string(), units: z.number() });
export type StagedLot = z.infer<typeof stagedLot>;

/** What was pulled for an order, by lot. */
export async function loadStagedLots({ tx, nurseryId }: ReadContext, orderId: string): Promise<StagedLot[]> {
  return tx.rows(stagedLot)`
    SELECT a.lot_id::text AS "lotId", sum(a.units)::int AS units
      FROM line_asked l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.order_id = ${orderId}::uuid
     GROUP BY a.lot_id ORDER BY a.lot_id`;
}

/** Units of a lot or batch at one place, or pulled for a line. */
export const stand = z.strictObject({
  placeId: z.nullable(z.string()),
  isQuarantine: z.boolean(),
  /** Whether the cold cannot reach it there; pulled plants say nothing of that. */
  isSheltered: z.nullable(z.boolean()),
  lineOrderId: z.nullable(z.string()),
  units: z.number(),
});
export type Stand = z.infer<typeof stand>;

const standOf = z.strictObject({ ...stand.shape, supplyId: z.string() });

/** Where each of these lots or batches stands. */
export async function loadStands(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<Map<string, Stand[]>> {
  const rows = await tx.rows(standOf)`
    SELECT coalesce(a.lot_id, a.batch_id)::text AS "supplyId", a.place_id::text AS "placeId", coalesce(w.kind = 'quarantine', false) AS "isQuarantine", w.winter_cover AS "isSheltered",
           l.order_id::text AS "lineOrderId", a.units
      FROM units_standing a
      LEFT JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
      LEFT JOIN line_asked l ON l.nursery_id = a.nursery_id AND l.id = a.line_id
     WHERE a.nursery_id = ${nurseryId}::uuid AND (a.lot_id = ANY (${[...ids]}::uuid[]) OR a.batch_id = ANY (${[...ids]}::uuid[])) AND a.units > 0`;
  return new Map(ids.map((id) => [id, rows.filter(({ supplyId }) => supplyId === id)]));
}

const shelterRow = z.strictObject({ isQuarantine: z.boolean(), isSheltered: z.nullable(z.boolean()) });

/** What plants would stand under at a place. */
export async function loadShelter(
  { tx, nurseryId }: ReadContext,
  placeId: string,
): Promise<Pick<Stand, 'isQuarantine' | 'isSheltered'>> {
  const row = await tx.row(shelterRow)`
    SELECT kind = 'quarantine' AS "isQuarantine", winter_cover AS "isSheltered" FROM place_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${placeId}::uuid`;
  return found(row, 'place', 'placeId');
}
