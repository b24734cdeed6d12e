import type { potLife } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { join, sql, type Sql } from '../../db/sql.ts';
import { inBand } from '../stock/bands.ts';

type Filter = z.output<typeof potLife.readBoard>;

/** A condition on `s`, a row of what stands open with its clock. */
export function boardConditions(nurseryId: string, filter: Filter, today: string, noticeDays: number): Sql {
  const conditions = [sql`true`];
  if (filter.show) conditions.push(shown(filter.show, today, noticeDays));
  // Mother stock stays where it is; it is shown when it is asked for, and after everything that must leave.
  if (filter.show && filter.show !== 'mother-stock') conditions.push(sql`NOT s.mother`);
  if (filter.kind !== 'all') conditions.push(sql`s.kind = ${filter.kind}`);
  if (filter.plantId) conditions.push(sql`s.plant_id = ${filter.plantId}::uuid`);
  if (filter.placeId) {
    conditions.push(
      sql`s.id IN (SELECT coalesce(a.lot_id, a.batch_id) FROM units_standing a WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0 AND a.place_id = ${filter.placeId}::uuid)`,
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
 * What stands open: lots in pots and batches of which something stands. Nursery beds have no pot and are left out. `free` is what promises may
 * still take: nothing of a held lot, nothing at quarantine places. On hand and reserved are summed once for all, since only live accounts and
 * open reservations are read. Its rows are kept short, since it holds every open lot and is gone through several times.
 */
export const openStock = (nurseryId: string): Sql => sql`
  held AS (
    SELECT h.lot_id AS id, bool_or(h.reason = 'mother-stock') AS mother, array_agg(h.reason ORDER BY h.reason) AS reasons FROM lot_held h
     WHERE h.nursery_id = ${nurseryId}::uuid GROUP BY h.lot_id),
  sums AS MATERIALIZED (
    SELECT u.id, sum(u.on_hand)::int AS on_hand, sum(u.staged)::int AS staged, sum(u.reserved)::int AS reserved,
           greatest(sum(u.supply) - sum(u.reserved), 0)::int AS free
      FROM (SELECT coalesce(a.lot_id, a.batch_id) AS id, CASE WHEN a.kind = 'place' THEN a.units ELSE 0 END AS on_hand,
                   CASE WHEN a.kind = 'staged' THEN a.units ELSE 0 END AS staged, 0 AS reserved,
                   CASE WHEN a.kind = 'place' AND a.place_id <> ALL (ARRAY(
                     SELECT q.id FROM place_named q WHERE q.nursery_id = ${nurseryId}::uuid AND q.kind = 'quarantine')) THEN a.units ELSE 0 END AS supply
              FROM units_standing a WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0
            UNION ALL
            SELECT r.supply_id, 0, 0, r.units, 0 FROM units_reserved r WHERE r.nursery_id = ${nurseryId}::uuid) u
     GROUP BY u.id),
  stock AS MATERIALIZED (
    SELECT 'lot' AS kind, l.id, l.code, l.plant_id, l.plant_by_on, l.plant_by_state, coalesce(h.mother, false) AS mother,
           coalesce(u.on_hand, 0) AS on_hand, coalesce(u.staged, 0) AS staged, coalesce(u.reserved, 0) AS reserved,
           CASE WHEN h.id IS NULL THEN coalesce(u.free, 0) ELSE 0 END AS free, h.reasons AS holds
      FROM lot_named l LEFT JOIN sums u ON u.id = l.id LEFT JOIN held h ON h.id = l.id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL
       AND l.container_id <> ALL (ARRAY(SELECT c.id FROM container_named c WHERE c.nursery_id = ${nurseryId}::uuid AND c.kind = 'ground'))
    UNION ALL
    SELECT 'batch', b.id, b.code, b.plant_id, b.plant_by_on, b.plant_by_state, false, u.on_hand, 0, u.reserved, u.free, NULL
      FROM batch_named b JOIN sums u ON u.id = b.id AND u.on_hand > 0
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL)`;
