import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface Staged {
  lineId: string;
  lotId: string;
  lotCode: string;
  units: number;
}

/** What stands staged for an order, by line and lot. */
export async function loadStaged({ tx, nurseryId }: ReadContext, orderId: string): Promise<Staged[]> {
  return tx.$queryRaw<Staged[]>`
    SELECT a.line_id::text AS "lineId", a.lot_id::text AS "lotId", t.code AS "lotCode", a.units
      FROM order_line l JOIN account a ON a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0
      JOIN lot t ON t.nursery_id = a.nursery_id AND t.id = a.lot_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.order_id = ${orderId}::uuid ORDER BY l.rank, t.code`;
}

/** The first quarantine place by code that is in use. */
export async function loadQuarantine({ tx, nurseryId }: ReadContext): Promise<string | undefined> {
  const [row] = await tx.$queryRaw<{ id: string }[]>`
    SELECT id::text FROM place WHERE nursery_id = ${nurseryId}::uuid AND kind = 'quarantine' AND retired_at IS NULL ORDER BY code LIMIT 1`;
  return row?.id;
}

export async function setPullIssued({ tx, nurseryId, today }: CommandContext, orderId: string): Promise<void> {
  await tx.$executeRaw`UPDATE garden_order SET pull_issued_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export interface OrderOfLines {
  id: string;
  code: string;
  state: string;
}

/** The orders that lines belong to, and one more if it is named: an order may have no line at all. */
export async function loadOrdersOf(
  { tx, nurseryId }: ReadContext,
  lineIds: readonly string[],
  orderId: string | null,
): Promise<OrderOfLines[]> {
  return tx.$queryRaw<OrderOfLines[]>`
    SELECT o.id::text, o.code, o.state FROM garden_order o
     WHERE o.nursery_id = ${nurseryId}::uuid
       AND (o.id = ${orderId}::uuid OR o.id IN (SELECT l.order_id FROM order_line l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...lineIds]}::uuid[])))`;
}
