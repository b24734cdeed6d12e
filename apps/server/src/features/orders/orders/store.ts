import { ORDER_KINDS, ORDER_STATES, type OrderKind, type OrderState } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow, raised } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const orderFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  kind: z.enum(ORDER_KINDS),
  state: z.enum(ORDER_STATES),
  dueOn: z.string(),
  clientId: z.string(),
  clientName: z.string(),
  siteId: z.nullable(z.string()),
  siteName: z.nullable(z.string()),
  /** Of its site; null where it has none. */
  region: z.nullable(z.string()),
  nativesOnly: z.boolean(),
  stagedUnits: z.number(),
  openLines: z.array(z.string()),
});

export type OrderFacts = z.infer<typeof orderFacts>;

export async function loadOrder({ tx, nurseryId }: ReadContext, id: string, field = 'orderId'): Promise<OrderFacts> {
  const row = await tx.row(orderFacts)`
    SELECT o.id::text, o.code, o.kind, o.state, o.due_on::text AS "dueOn", o.client_id::text AS "clientId", k.name AS "clientName", o.site_id::text AS "siteId", s.name AS "siteName", s.region, o.natives_only AS "nativesOnly",
           coalesce((SELECT sum(a.units)::int FROM order_line l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.line_id = l.id WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id), 0) AS "stagedUnits",
           coalesce((SELECT array_agg(l.id::text ORDER BY l.rank) FROM order_line l WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL), '{}') AS "openLines"
      FROM garden_order o JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id LEFT JOIN site_named s ON s.nursery_id = o.nursery_id AND s.id = o.site_id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = ${id}::uuid`;
  return found(row, 'order', field);
}

export async function loadOpenOrder(context: ReadContext, id: string): Promise<OrderFacts> {
  const order = await loadOrder(context, id);
  if (order.state !== 'open') refuse('order-not-open', { order: order.code, state: order.state }, 'orderId');
  return order;
}

export async function insertOrder(
  { tx, nurseryId }: CommandContext,
  order: {
    orderId: string;
    clientId: string;
    siteId: string | null;
    kind: OrderKind;
    dueOn: string;
    note: string;
    nativesOnly: boolean;
    code: string;
  },
): Promise<void> {
  await tx.run`
    INSERT INTO garden_order (nursery_id, id, code, client_id, site_id, kind, due_on, note, natives_only)
    VALUES (${nurseryId}::uuid, ${order.orderId}::uuid, ${order.code}, ${order.clientId}::uuid, ${order.siteId}::uuid, ${order.kind}, ${order.dueOn}::date, ${order.note}, ${order.nativesOnly})`;
}

export async function setDay({ tx, nurseryId }: CommandContext, orderId: string, dueOn: string): Promise<void> {
  await tx.run`UPDATE garden_order SET due_on = ${dueOn}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export async function setState({ tx, nurseryId }: CommandContext, orderId: string, state: OrderState): Promise<void> {
  await tx.run`UPDATE garden_order SET state = ${state} WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export async function updateOrder(
  { tx, nurseryId }: CommandContext,
  orderId: string,
  { note, nativesOnly }: { note: string; nativesOnly: boolean },
): Promise<void> {
  await tx.run`UPDATE garden_order SET note = ${note}, natives_only = ${nativesOnly} WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

/** Takes out what was written of a client's orders; what was planted and promised stays under the order's code. */
export async function blankOrdersOf(context: CommandContext, clientId: string): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.run`
    UPDATE garden_order SET note = '', ${raised(context)}
     WHERE nursery_id = ${nurseryId}::uuid AND client_id = ${clientId}::uuid`;
}

export async function setPullIssued({ tx, nurseryId, today }: CommandContext, orderId: string): Promise<void> {
  await tx.run`UPDATE garden_order SET pull_issued_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export const orderEdits = editedRow<{ orderId: string }>({
  table: 'garden_order',
  row: ({ orderId }) => sql`r.id = ${orderId}::uuid`,
  partial: true,
  fields: columns('note', 'nativesOnly'),
});

export const dayEdits = editedRow<{ orderId: string }>({
  table: 'garden_order',
  row: ({ orderId }) => sql`r.id = ${orderId}::uuid`,
  fields: columns('dueOn'),
});
