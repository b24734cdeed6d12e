import type { promises } from '@rootclock/contracts';
import { ORDER_KINDS, ORDER_STATES } from '@rootclock/domain';
import * as z from 'zod/mini';
import { containing } from '../../../db/like.ts';
import { join, sql, type Sql } from '../../../db/sql.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

type OrderRow = promises.OrderRow;
type Filter = Pick<z.output<typeof promises.listOrders>, 'sort' | 'descending' | 'page' | 'perPage'>;

/** Orders as `o`, with their client as `k` and their site as `t`. */
export function orderConditions(
  { nurseryId }: ReadContext,
  filter: Partial<Omit<z.output<typeof promises.listOrders>, keyof Filter>> & { orderId?: string; siteId?: string },
): Sql {
  const conditions = [sql`o.nursery_id = ${nurseryId}::uuid`];
  const when = (wanted: unknown, condition: Sql) => wanted && conditions.push(condition);
  when(filter.orderId, sql`o.id = ${filter.orderId}::uuid`);
  when(filter.siteId, sql`o.site_id = ${filter.siteId}::uuid`);
  when(filter.clientId, sql`o.client_id = ${filter.clientId}::uuid`);
  when(filter.state, sql`o.state = ${filter.state}`);
  when(filter.kind, sql`o.kind = ${filter.kind}`);
  when(filter.dueFrom, sql`o.due_on >= ${filter.dueFrom}::date`);
  when(filter.dueTo, sql`o.due_on <= ${filter.dueTo}::date`);
  const text = filter.search?.trim();
  if (text)
    conditions.push(
      sql`(o.code ILIKE ${containing(text)} OR k.name ILIKE ${containing(text)} OR t.name ILIKE ${containing(text)})`,
    );
  when(
    filter.shortOnly,
    sql`o.state = 'open' AND EXISTS (
    SELECT 1 FROM line_asked l JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
     WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL AND l.units > g.reserved_units + g.staged_units + g.delivered_units)`,
  );
  return join(conditions, ' AND ');
}

const SHORT = sql`(SELECT coalesce(sum(greatest(0, l.units - g.reserved_units - g.staged_units - g.delivered_units)), 0) FROM line_asked l
  JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
 WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id AND l.withdrawn_on IS NULL AND o.state = 'open')`;

const KEYS: Record<Filter['sort'], Sql> = {
  due: sql`o.due_on`,
  client: sql`lower(k.name)`,
  code: sql`o.code`,
  short: SHORT,
};

const listedOrder = z.strictObject({
  row: z.nullable(
    z.strictObject({
      id: z.string(),
      edition: z.number(),
      code: z.string(),
      kind: z.enum(ORDER_KINDS),
      state: z.enum(ORDER_STATES),
      dueOn: z.string(),
      clientId: z.string(),
      clientName: z.string(),
      siteId: z.nullable(z.string()),
      siteName: z.nullable(z.string()),
      pullIssuedOn: z.nullable(z.string()),
      note: z.string(),
      lines: z.number(),
      wantedUnits: z.number(),
      reservedUnits: z.number(),
      stagedUnits: z.number(),
      deliveredUnits: z.number(),
      shortUnits: z.number(),
    }),
  ),
  total: z.number(),
});

/**
 * One page of orders with what they want and have. Units are reckoned only for the orders that are shown, and once for each line: OFFSET 0 keeps
 * the planner from putting the progress view in wherever one of its columns stands.
 */
export async function readOrderRows(
  { tx, nurseryId }: ReadContext,
  where: Sql,
  { sort, descending, page, perPage }: Filter,
): Promise<{ rows: OrderRow[]; total: number }> {
  const direction = descending ? sql`DESC` : sql`ASC`;
  const rows = await tx.rows(listedOrder)`
    WITH matching AS MATERIALIZED (
      SELECT o.id, o.code, ${KEYS[sort]} AS key
        FROM order_told o JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
       WHERE ${where}),
    shown AS (SELECT id, code, key FROM matching ORDER BY key ${direction}, code LIMIT ${perPage} OFFSET ${(page - 1) * perPage})
    SELECT c.total, x.row FROM (SELECT count(*)::int AS total FROM matching) c LEFT JOIN (
      SELECT s.key, s.code, jsonb_build_object('id', o.id, 'edition', o.edition, 'code', o.code, 'kind', o.kind, 'state', o.state, 'dueOn', o.due_on, 'clientId', k.id, 'clientName', k.name,
               'siteId', t.id, 'siteName', t.name, 'pullIssuedOn', o.pull_issued_on, 'note', o.note, 'lines', coalesce(u.lines, 0), 'wantedUnits', coalesce(u.wanted, 0),
               'reservedUnits', coalesce(u.reserved, 0), 'stagedUnits', coalesce(u.staged, 0), 'deliveredUnits', coalesce(u.delivered, 0),
               'shortUnits', CASE WHEN o.state = 'open' THEN coalesce(u.short, 0) ELSE 0 END) AS row
        FROM shown s
        JOIN order_told o ON o.nursery_id = ${nurseryId}::uuid AND o.id = s.id
        JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
        LEFT JOIN site_named t ON t.nursery_id = o.nursery_id AND t.id = o.site_id
        LEFT JOIN LATERAL (
          SELECT count(*) FILTER (WHERE l.withdrawn_on IS NULL)::int AS lines, sum(l.units) FILTER (WHERE l.withdrawn_on IS NULL)::int AS wanted, sum(g.reserved_units)::int AS reserved,
                 sum(g.staged_units)::int AS staged, sum(g.delivered_units)::int AS delivered,
                 sum(greatest(0, l.units - g.reserved_units - g.staged_units - g.delivered_units)) FILTER (WHERE l.withdrawn_on IS NULL)::int AS short
            FROM line_asked l CROSS JOIN LATERAL (SELECT * FROM line_progress p WHERE p.nursery_id = l.nursery_id AND p.line_id = l.id OFFSET 0) g
           WHERE l.nursery_id = o.nursery_id AND l.order_id = o.id) u ON true) x ON true
     ORDER BY x.key ${direction}, x.code`;
  return { rows: rows.flatMap(({ row }) => row ?? []), total: rows[0]?.total ?? 0 };
}

/** All orders that match, for a client's or a site's page: the nearest day last, so that history reads backwards. */
export const readAllOrderRows = async (context: ReadContext, where: Sql): Promise<OrderRow[]> =>
  (await readOrderRows(context, where, { sort: 'due', descending: true, page: 1, perPage: 200 })).rows;
