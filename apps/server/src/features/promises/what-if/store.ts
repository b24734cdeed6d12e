import { ORDER_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found, refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

export const triedOrder = z.strictObject({
  code: z.string(),
  state: z.string(),
  kind: z.enum(ORDER_KINDS),
  dueOn: z.string(),
  clientId: z.string(),
  clientName: z.string(),
  siteId: z.nullable(z.string()),
  siteName: z.nullable(z.string()),
  /** Of its site; null where it has none. */
  region: z.nullable(z.string()),
  nativesOnly: z.boolean(),
  openLines: z.array(z.string()),
  /** What was pulled for it, by lot. */
  staged: z.array(z.strictObject({ lotId: z.string(), units: z.number() })),
});
export type TriedOrder = z.infer<typeof triedOrder>;

/** An order that can still be changed. */
export async function loadOpenOrder({ tx, nurseryId }: ReadContext, orderId: string): Promise<TriedOrder> {
  const row = await tx.row(triedOrder)`
    SELECT o.code, o.state, o.kind, o.due_on::text AS "dueOn", o.client_id::text AS "clientId", k.name AS "clientName", o.site_id::text AS "siteId", t.name AS "siteName", t.region, o.natives_only AS "nativesOnly",
           coalesce((SELECT array_agg(l.id::text ORDER BY l.rank) FROM line_asked l WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL), '{}') AS "openLines",
           coalesce((SELECT jsonb_agg(jsonb_build_object('lotId', s.lot_id, 'units', s.units) ORDER BY s.lot_id)
                       FROM (SELECT a.lot_id, sum(a.units)::int AS units FROM line_asked l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.line_id = l.id AND a.units > 0
                              WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id GROUP BY a.lot_id) s), '[]') AS staged
      FROM order_named o JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = ${orderId}::uuid`;
  const order = found(row, 'order', 'orderId');
  if (order.state !== 'open') refuse('order-not-open', { order: order.code, state: order.state }, 'orderId');
  return order;
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

const clientNameRow = z.strictObject({ name: z.string() });

export async function loadClientName({ tx, nurseryId }: ReadContext, clientId: string): Promise<string> {
  const row = await tx.row(
    clientNameRow,
  )`SELECT name FROM client_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${clientId}::uuid`;
  return found(row, 'client', 'clientId').name;
}

const siteRow = z.strictObject({ name: z.string(), clientId: z.string() });

export async function loadSite(
  { tx, nurseryId }: ReadContext,
  siteId: string,
): Promise<{ name: string; clientId: string }> {
  const row = await tx.row(
    siteRow,
  )`SELECT name, client_id::text AS "clientId" FROM site_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${siteId}::uuid`;
  return found(row, 'site', 'siteId');
}
