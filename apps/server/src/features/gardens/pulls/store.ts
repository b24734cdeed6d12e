import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export const staged = z.strictObject({
  lineId: z.string(),
  lotId: z.string(),
  lotCode: z.string(),
  units: z.number(),
});
export type Staged = z.infer<typeof staged>;

/** What stands staged for an order, by line and lot. */
export async function loadStaged({ tx, nurseryId }: ReadContext, orderId: string): Promise<Staged[]> {
  return tx.rows(staged)`
    SELECT a.line_id::text AS "lineId", a.lot_id::text AS "lotId", t.code AS "lotCode", a.units
      FROM line_asked l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0
      JOIN lot_named t ON t.nursery_id = a.nursery_id AND t.id = a.lot_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.order_id = ${orderId}::uuid ORDER BY l.rank, t.code`;
}

const quarantineRow = z.strictObject({ id: z.string() });

/** The first quarantine place by code that is in use. */
export async function loadQuarantine({ tx, nurseryId }: ReadContext): Promise<string | undefined> {
  const row = await tx.row(quarantineRow)`
    SELECT id::text FROM place_named WHERE nursery_id = ${nurseryId}::uuid AND kind = 'quarantine' AND retired_at IS NULL ORDER BY code LIMIT 1`;
  return row?.id;
}

export const orderOfLines = z.strictObject({
  id: z.string(),
  code: z.string(),
  state: z.string(),
});
export type OrderOfLines = z.infer<typeof orderOfLines>;

/** The orders that lines belong to, and one more if it is named: an order may have no line at all. */
export async function loadOrdersOf(
  { tx, nurseryId }: ReadContext,
  lineIds: readonly string[],
  orderId: string | null,
): Promise<OrderOfLines[]> {
  return tx.rows(orderOfLines)`
    SELECT o.id::text, o.code, o.state FROM order_named o
     WHERE o.nursery_id = ${nurseryId}::uuid
       AND (o.id = ${orderId}::uuid OR o.id IN (SELECT l.order_id FROM line_asked l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...lineIds]}::uuid[])))`;
}
