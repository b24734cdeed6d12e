import type { potLife } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { join, sql, type Sql } from '../../../../db/sql.ts';
import { inBand } from '../../../stock/table/reads/bands.ts';

type Filter = z.output<typeof potLife.readBoard>;

/** A condition on `s`, a row of what stands open with its clock. */
export function boardConditions(filter: Filter, today: string, noticeDays: number): Sql {
  const conditions = [sql`true`];
  if (filter.show) conditions.push(shown(filter.show, today, noticeDays));
  // Mother stock stays where it is; it is shown when it is asked for, and after everything that must leave.
  if (filter.show && filter.show !== 'mother-stock') conditions.push(sql`NOT s.mother`);
  if (filter.kind !== 'all') conditions.push(sql`s.kind = ${filter.kind}`);
  if (filter.plantId) conditions.push(sql`s.plant_id = ${filter.plantId}::uuid`);
  if (filter.placeId) {
    conditions.push(
      sql`EXISTS (SELECT 1 FROM units_standing a WHERE a.nursery_id = s.nursery_id AND a.units > 0 AND a.place_id = ${filter.placeId}::uuid AND coalesce(a.lot_id, a.batch_id) = s.id)`,
    );
  }
  if (filter.free) conditions.push(sql`s.free > 0`);
  return join(conditions, ' AND ');
}

function shown(show: NonNullable<Filter['show']>, today: string, noticeDays: number): Sql {
  switch (show) {
    case 'mother-stock':
      return sql`s.mother`;
    case 'no-window':
    case 'winter-carry':
      return sql`s.plant_by_state = ${show}`;
    default:
      return inBand(sql`s.plant_by_on`, show, today, noticeDays);
  }
}

/**
 * What stands open with its clock: lots in pots and batches of which something stands. Nursery beds have no pot and are left out.
 * `free` is what promises may still take: nothing of a held lot, nothing at quarantine places. On hand and reserved are summed once for all, since only live accounts and open reservations are read.
 */
export const openStock = (nurseryId: string): Sql => sql`
  live AS (
    SELECT coalesce(a.lot_id, a.batch_id) AS id, sum(a.units) FILTER (WHERE a.kind = 'place') AS on_hand, sum(a.units) FILTER (WHERE k.kind <> 'quarantine') AS supply, sum(a.units) FILTER (WHERE a.kind = 'staged') AS staged
      FROM units_standing a LEFT JOIN place_named k ON k.nursery_id = a.nursery_id AND k.id = a.place_id WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0 GROUP BY 1),
  promised AS (SELECT r.supply_id AS id, sum(r.units) AS units FROM units_reserved r WHERE r.nursery_id = ${nurseryId}::uuid GROUP BY 1),
  held AS (SELECT h.lot_id AS id, bool_or(h.reason = 'mother-stock') AS mother FROM hold h WHERE h.nursery_id = ${nurseryId}::uuid AND h.released_on IS NULL GROUP BY h.lot_id),
  stock AS (
    SELECT 'lot' AS kind, 'plant' AS unit, l.nursery_id, l.id, l.code, l.plant_id, l.container_id, l.plant_by_on, l.plant_by_state, l.limit_on, l.next_opens_on, l.rule_id, l.window_id,
           l.confined_on, l.container_on, l.confined_standing, l.container_standing, l.ready_on, l.root_checked_on,
           coalesce(live.on_hand, 0)::int AS on_hand, coalesce(live.staged, 0)::int AS staged, coalesce(promised.units, 0)::int AS reserved, coalesce(held.mother, false) AS mother,
           CASE WHEN held.id IS NULL THEN greatest(coalesce(live.supply, 0) - coalesce(promised.units, 0), 0) ELSE 0 END::int AS free
      FROM lot l LEFT JOIN live ON live.id = l.id LEFT JOIN promised ON promised.id = l.id LEFT JOIN held ON held.id = l.id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id AND c.kind <> 'ground'
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL
    UNION ALL
    SELECT 'batch', b.unit, b.nursery_id, b.id, b.code, b.plant_id, b.container_id, b.plant_by_on, b.plant_by_state, b.limit_on, b.next_opens_on, b.rule_id, b.window_id,
           b.confined_on, b.container_on, 'recorded', 'recorded', b.ready_on, NULL,
           live.on_hand::int, 0, coalesce(promised.units, 0)::int, false, greatest(coalesce(live.supply, 0) - coalesce(promised.units, 0), 0)::int
      FROM batch b JOIN live ON live.id = b.id LEFT JOIN promised ON promised.id = b.id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL)`;
