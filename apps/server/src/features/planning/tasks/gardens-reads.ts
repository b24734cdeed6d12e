import { ORDER_KINDS, type TaskOrder, type TaskPlanting } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

const openOrder = z.strictObject({
  id: z.string(),
  code: z.string(),
  kind: z.enum(ORDER_KINDS),
  dueOn: z.string(),
  toPullUnits: z.number(),
  stagedUnits: z.number(),
  placeIds: z.array(z.string()),
});

/** Open orders that are due by a day, with what lots are promised to them and what stands staged. */
export async function readTaskOrders({ tx, nurseryId }: ReadContext, until: string): Promise<TaskOrder[]> {
  return tx.rows(openOrder)`
    WITH orders AS MATERIALIZED (SELECT o.id, o.code, o.kind, o.due_on FROM order_named o WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open' AND o.due_on <= ${until}::date),
    lines AS MATERIALIZED (SELECT l.id, l.order_id FROM orders o JOIN line_asked l ON l.nursery_id = ${nurseryId}::uuid AND l.order_id = o.id AND l.withdrawn_on IS NULL),
    promised AS MATERIALIZED (SELECT l.order_id, r.lot_id, r.units FROM lines l JOIN units_reserved r ON r.nursery_id = ${nurseryId}::uuid AND r.line_id = l.id AND r.lot_id IS NOT NULL),
    to_pull AS (SELECT order_id, sum(units)::int AS units FROM promised GROUP BY 1),
    staged AS (SELECT l.order_id, sum(a.units)::int AS units FROM lines l JOIN units_standing a ON a.nursery_id = ${nurseryId}::uuid AND a.line_id = l.id AND a.units > 0 GROUP BY 1),
    places AS (SELECT q.order_id, array_agg(DISTINCT a.place_id::text) AS ids FROM promised q
        JOIN units_standing a ON a.nursery_id = ${nurseryId}::uuid AND a.lot_id = q.lot_id AND a.kind = 'place' AND a.units > 0 GROUP BY 1)
    SELECT o.id::text, o.code, o.kind, o.due_on::text AS "dueOn", coalesce(t.units, 0) AS "toPullUnits", coalesce(s.units, 0) AS "stagedUnits", coalesce(p.ids, '{}') AS "placeIds"
      FROM orders o LEFT JOIN to_pull t ON t.order_id = o.id LEFT JOIN staged s ON s.order_id = o.id LEFT JOIN places p ON p.order_id = o.id
     WHERE t.units > 0 OR s.units > 0`;
}

const planting = z.strictObject({
  orderId: z.string(),
  orderCode: z.string(),
  plantedOn: z.string(),
  units: z.number(),
  plants: z.array(
    z.strictObject({ name: z.string(), dormantMonths: z.array(z.number()), lastEmergenceMd: z.nullable(z.string()) }),
  ),
});

/**
 * What was planted for orders since a day and stands, by order and day. OFFSET 0 makes each step look its few rows up by key: left to itself the planner
 * expects none to be left at the end and begins with every account there is.
 */
export async function readTaskPlantings({ tx, nurseryId }: ReadContext, since: string): Promise<TaskPlanting[]> {
  return tx.rows(planting)`
    WITH planted AS MATERIALIZED (
      SELECT e.id, e.happened_on FROM entry_told e
       WHERE e.nursery_id = ${nurseryId}::uuid AND e.kind = 'plant' AND e.happened_on >= ${since}::date
         AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)),
    rows AS MATERIALIZED (
      SELECT i.order_id, e.happened_on, l.plant_id, sum(m.from_units)::int AS units FROM planted e
       CROSS JOIN LATERAL (SELECT m.from_account_id, m.from_units FROM movement_told m
                            WHERE m.nursery_id = ${nurseryId}::uuid AND m.entry_id = e.id AND m.to_account_id = account_key('outside', 'outside', 'planted') OFFSET 0) m
       CROSS JOIN LATERAL (SELECT a.line_id, a.lot_id FROM account_told a WHERE a.nursery_id = ${nurseryId}::uuid AND a.id = m.from_account_id OFFSET 0) a
       CROSS JOIN LATERAL (SELECT i.order_id FROM line_asked i WHERE i.nursery_id = ${nurseryId}::uuid AND i.id = a.line_id OFFSET 0) i
       CROSS JOIN LATERAL (SELECT l.plant_id FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = a.lot_id OFFSET 0) l
       GROUP BY 1, 2, 3)
    SELECT o.id::text AS "orderId", o.code AS "orderCode", r.happened_on::text AS "plantedOn", sum(r.units)::int AS units,
           json_agg(json_build_object('name', p.scientific_name, 'dormantMonths', p.dormant_months, 'lastEmergenceMd', p.last_emergence_md) ORDER BY p.scientific_name) AS plants
      FROM rows r
      JOIN order_named o ON o.nursery_id = ${nurseryId}::uuid AND o.id = r.order_id
      JOIN plant_named p ON p.nursery_id = ${nurseryId}::uuid AND p.id = r.plant_id
     GROUP BY o.id, o.code, r.happened_on`;
}
