import { PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql } from '../../../db/sql.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { ofPlants } from './batch-stages-reads.ts';

export const grownStage = z.strictObject({
  plantId: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
  tried: z.number(),
  passed: z.number(),
  batches: z.number(),
});
export type GrownStage = z.infer<typeof grownStage>;

/**
 * How many of the plants potted from batches got ready, by plant, method and the name of the protocol, from the entries that stand. Plants are followed
 * through potting up, splitting, merging and converting as long as they keep their name and are not ready; of a merged lot each batch has the share it brought in. Passed
 * are those that left alive (planted, sold, given) or whose root ball was found to hold; failed are those lost before, and those
 * that counts came short of beyond what counts found again. Plants that stand and are not ready are tried by nobody yet.
 */
export async function readGrowing(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<GrownStage[]> {
  return tx.rows(grownStage)`
    WITH RECURSIVE void AS MATERIALIZED (
      SELECT unnest(ARRAY[id, reverses_id]) AS id FROM entry_told WHERE nursery_id = ${nurseryId}::uuid AND reverses_id IS NOT NULL),
    own AS MATERIALIZED (
      SELECT b.id, b.plant_id, b.method, coalesce(q.label, '') AS label
        FROM batch_named b LEFT JOIN protocol_version v ON v.nursery_id = b.nursery_id AND v.id = b.protocol_version_id LEFT JOIN protocol q ON q.nursery_id = v.nursery_id AND q.id = v.protocol_id
       WHERE b.nursery_id = ${nurseryId}::uuid AND ${ofPlants(sql`b.plant_id`, plantIds)}),
    grown AS MATERIALIZED (
      SELECT l.id, CASE WHEN l.root_checked_on IS NULL THEN NULL ELSE least(l.ready_on, l.root_checked_on) END AS ready_on
        FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND ${ofPlants(sql`l.plant_id`, plantIds)}),
    held AS MATERIALIZED (SELECT a.id, a.lot_id, a.units FROM grown g JOIN account_told a ON a.nursery_id = ${nurseryId}::uuid AND a.lot_id = g.id),
    came AS MATERIALIZED (
      SELECT h.lot_id, f.lot_id AS from_lot, f.batch_id AS from_batch, f.outside, m.entry_id, m.to_units AS units
        FROM held h JOIN movement_told m ON m.nursery_id = ${nurseryId}::uuid AND m.to_account_id = h.id JOIN account_told f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
       WHERE f.lot_id IS DISTINCT FROM h.lot_id AND NOT EXISTS (SELECT 1 FROM void x WHERE x.id = m.entry_id)),
    went AS MATERIALIZED (
      SELECT h.lot_id, t.lot_id AS to_lot, t.outside, m.from_units AS units, g.ready_on IS NOT NULL AND e.happened_on >= g.ready_on AS ready
        FROM held h JOIN grown g ON g.id = h.lot_id JOIN movement_told m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = h.id
        JOIN account_told t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
       WHERE t.lot_id IS DISTINCT FROM h.lot_id AND NOT EXISTS (SELECT 1 FROM void x WHERE x.id = m.entry_id)),
    ends AS (
      SELECT lot_id, coalesce(sum(units) FILTER (WHERE ready OR outside IN ('planted', 'sold', 'given')), 0) AS passed,
             coalesce(sum(units) FILTER (WHERE NOT ready AND outside = 'lost'), 0) AS lost, coalesce(sum(units) FILTER (WHERE NOT ready AND outside = 'unexplained'), 0) AS missing
        FROM went GROUP BY lot_id),
    entered AS (
      SELECT lot_id, sum(units) FILTER (WHERE outside IS DISTINCT FROM 'found') AS units, coalesce(sum(units) FILTER (WHERE outside = 'found'), 0) AS found FROM came GROUP BY lot_id),
    standing AS (SELECT lot_id, sum(units) AS units FROM held WHERE units > 0 GROUP BY lot_id),
    fates AS MATERIALIZED (
      SELECT g.id AS lot_id, i.units + greatest(0, i.found - coalesce(n.missing, 0)) AS units,
             coalesce(n.passed, 0) + CASE WHEN g.ready_on IS NULL THEN 0 ELSE coalesce(s.units, 0) END AS passed,
             coalesce(n.lost, 0) + greatest(0, coalesce(n.missing, 0) - i.found) AS failed
        FROM grown g JOIN entered i ON i.lot_id = g.id LEFT JOIN ends n ON n.lot_id = g.id LEFT JOIN standing s ON s.lot_id = g.id),
    flows AS MATERIALIZED (
      SELECT c.lot_id, c.from_lot, c.from_batch, sum(c.units)::float8 / f.units AS part
        FROM came c JOIN fates f ON f.lot_id = c.lot_id AND f.units > 0
        LEFT JOIN grown p ON p.id = c.from_lot LEFT JOIN entry_told e ON e.nursery_id = ${nurseryId}::uuid AND e.id = c.entry_id
       WHERE (c.from_batch IS NOT NULL OR (c.from_lot IS NOT NULL AND (p.ready_on IS NULL OR e.happened_on < p.ready_on)))
       GROUP BY c.lot_id, c.from_lot, c.from_batch, f.units),
    traced (lot_id, batch_id, plant_id, method, label, part) AS (
      SELECT f.lot_id, o.id, o.plant_id, o.method, o.label, f.part FROM flows f JOIN own o ON o.id = f.from_batch
      UNION ALL SELECT f.lot_id, t.batch_id, t.plant_id, t.method, t.label, t.part * f.part FROM traced t JOIN flows f ON f.from_lot = t.lot_id),
    outcomes AS (
      SELECT t.batch_id, t.plant_id, t.method, t.label, t.part * (f.passed + f.failed)::float8 AS tried, t.part * f.passed::float8 AS passed FROM traced t JOIN fates f ON f.lot_id = t.lot_id)
    SELECT plant_id::text AS "plantId", method, label, round(sum(tried))::int AS tried, least(round(sum(passed)), round(sum(tried)))::int AS passed, count(DISTINCT batch_id)::int AS batches
      FROM outcomes WHERE tried > 1e-6
     GROUP BY plant_id, method, label ORDER BY plant_id, method, label`;
}
