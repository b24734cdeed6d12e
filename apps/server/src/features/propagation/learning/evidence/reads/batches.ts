import { PROPAGATION_METHODS, STAGE_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../../../db/sql.ts';
import type { ReadContext } from '../../../../../trpc/operation.ts';

export const countedStage = z.strictObject({
  plantId: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
  stage: z.enum(STAGE_KINDS),
  /** Whether seeds were tried; otherwise cells or pieces, or plants where the stage is a later one. */
  ofSeeds: z.boolean(),
  /** Whether the current protocol of this name sows whole trays or packs; null where there is none. */
  protocolSowsSeeds: z.nullable(z.boolean()),
  tried: z.number(),
  passed: z.number(),
  batches: z.number(),
  /** Plants beyond those tried, which count as no passes. */
  over: z.number(),
});
export type CountedStage = z.infer<typeof countedStage>;

export const ofPlants = (column: Sql, plantIds: readonly string[] | 'all') =>
  plantIds === 'all' ? sql`true` : sql`${column} = ANY (${[...plantIds]}::uuid[])`;

/**
 * How many came up or rooted, and how many of those were potted, by plant, method and the name of the protocol, from the entries that stand.
 *
 * Coming up and rooting: tried are the cells or pieces started, as corrected since; of trays and packs the seeds sown, where they are known. Packs whose
 * seed was drawn into other batches speak through those. Passed is the most that any count and the pottings before it showed alive. A batch speaks once it is decided:
 * closed, or potted from, or when the long wait of its protocol is over since the first came up; kept for a second winter, once it is closed.
 * Closed batches that nobody counted speak of none alive, unless they were discarded.
 *
 * Pricking out: of batches that were counted. Tried are those that came up, in an open batch only as many of them as were potted or lost since; passed
 * are the plants potted, and no more than were tried.
 */
export async function readBatchStages(
  { tx, nurseryId, today }: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<CountedStage[]> {
  return tx.rows(countedStage)`
    WITH void AS MATERIALIZED (
      SELECT unnest(ARRAY[id, reverses_id]) AS id FROM entry WHERE nursery_id = ${nurseryId}::uuid AND reverses_id IS NOT NULL),
    own AS MATERIALIZED (
      SELECT b.id, b.plant_id, b.method, coalesce(q.label, '') AS label, b.unit IN ('tray', 'pack') AS of_seeds, b.seeds_sown, b.closed_on, b.second_winter_on, g.long_days
        FROM batch b
        LEFT JOIN protocol_version v ON v.nursery_id = b.nursery_id AND v.id = b.protocol_version_id
        LEFT JOIN protocol q ON q.nursery_id = v.nursery_id AND q.id = v.protocol_id
        LEFT JOIN protocol_stage g ON g.nursery_id = v.nursery_id AND g.version_id = v.id AND g.kind IN ('emergence', 'rooting')
       WHERE b.nursery_id = ${nurseryId}::uuid AND ${ofPlants(sql`b.plant_id`, plantIds)} AND NOT EXISTS (SELECT 1 FROM void x WHERE x.id = b.created_entry_id)),
    held AS MATERIALIZED (SELECT a.id, a.batch_id FROM own o JOIN account a ON a.nursery_id = ${nurseryId}::uuid AND a.batch_id = o.id),
    moved AS MATERIALIZED (
      SELECT h.batch_id, m.entry_id, -m.from_units AS units, m.to_units AS plants, t.lot_id, t.batch_id AS other_id, t.outside, false AS entering
        FROM held h JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = h.id JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
       WHERE t.batch_id IS DISTINCT FROM h.batch_id
      UNION ALL
      SELECT h.batch_id, m.entry_id, m.to_units, 0, f.lot_id, f.batch_id, f.outside, true
        FROM held h JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.to_account_id = h.id JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
       WHERE f.batch_id IS DISTINCT FROM h.batch_id),
    told AS MATERIALIZED (
      SELECT m.*, e.kind, e.cause, e.happened_on, e.version, e.details ? 'correctedUnits' AS corrects
        FROM moved m JOIN entry e ON e.nursery_id = ${nurseryId}::uuid AND e.id = m.entry_id
       WHERE NOT EXISTS (SELECT 1 FROM void x WHERE x.id = m.entry_id)),
    counted AS MATERIALIZED (
      SELECT c.batch_id, c.emerged_units, c.unexplained_units, c.counted_on, e.version
        FROM own o JOIN batch_count c ON c.nursery_id = ${nurseryId}::uuid AND c.batch_id = o.id JOIN entry e ON e.nursery_id = c.nursery_id AND e.id = c.entry_id
       WHERE NOT EXISTS (SELECT 1 FROM void x WHERE x.id = c.entry_id)),
    potted AS MATERIALIZED (
      SELECT t.batch_id, t.happened_on, t.version, sum(-t.units) AS units, sum(t.plants) AS plants,
             CASE WHEN o.of_seeds THEN sum(t.plants) ELSE least(sum(-t.units), sum(t.plants)) END AS alive
        FROM told t JOIN own o ON o.id = t.batch_id WHERE t.lot_id IS NOT NULL AND t.kind = 'pot' GROUP BY t.batch_id, t.happened_on, t.version, o.of_seeds),
    pottings AS (SELECT batch_id, sum(units) AS units, sum(plants) AS plants, sum(alive) AS alive FROM potted GROUP BY batch_id),
    shown AS (
      SELECT c.batch_id, c.counted_on, c.emerged_units, c.unexplained_units,
             c.emerged_units + coalesce(sum(p.alive) FILTER (WHERE (p.happened_on, p.version) < (c.counted_on, c.version)), 0) AS alive
        FROM counted c LEFT JOIN potted p ON p.batch_id = c.batch_id GROUP BY c.batch_id, c.version, c.counted_on, c.emerged_units, c.unexplained_units),
    counts AS (
      SELECT batch_id, max(alive) AS alive, min(counted_on) FILTER (WHERE emerged_units > 0) AS first_on, sum(unexplained_units) AS missing FROM shown GROUP BY batch_id),
    sums AS (
      SELECT t.batch_id,
             coalesce(sum(t.units) FILTER (WHERE t.entering OR (t.corrects AND t.outside = 'unexplained')), 0) AS begun,
             coalesce(bool_or(t.other_id IS NOT NULL AND NOT t.entering), false) AS drawn,
             coalesce(sum(-t.units) FILTER (WHERE t.outside = 'lost' AND t.cause IS DISTINCT FROM 'failed' AND t.happened_on >= n.first_on), 0) AS lost
        FROM told t LEFT JOIN counts n ON n.batch_id = t.batch_id GROUP BY t.batch_id),
    known AS (
      SELECT o.plant_id, o.method, o.label, o.of_seeds, o.closed_on IS NOT NULL AS closed, n.alive AS counted,
             CASE WHEN o.of_seeds THEN o.seeds_sown ELSE s.begun END AS tried,
             greatest(n.alive, coalesce(p.alive, 0)) AS alive, coalesce(p.plants, 0) AS plants,
             coalesce(CASE WHEN o.of_seeds THEN p.plants ELSE p.units END, 0) + coalesce(n.missing, 0) + CASE WHEN o.of_seeds THEN 0 ELSE s.lost END AS gone,
             (o.closed_on IS NOT NULL OR (o.second_winter_on IS NULL AND (coalesce(p.plants, 0) > 0 OR n.first_on + o.long_days < ${today}::date)))
               AND (n.alive IS NOT NULL OR coalesce(p.plants, 0) > 0 OR NOT EXISTS (SELECT 1 FROM told d WHERE d.batch_id = o.id AND d.outside = 'lost' AND d.cause = 'discarded')) AS decided
        FROM own o JOIN sums s ON s.batch_id = o.id AND NOT s.drawn LEFT JOIN counts n ON n.batch_id = o.id LEFT JOIN pottings p ON p.batch_id = o.id),
    stages AS (
      SELECT plant_id, method, label, CASE method WHEN 'seed' THEN 'emergence' ELSE 'rooting' END AS stage, of_seeds, tried, least(tried, coalesce(alive, 0)) AS passed,
             greatest(0, coalesce(alive, 0) - tried) AS over
        FROM known WHERE decided AND tried > 0
      UNION ALL
      SELECT plant_id, method, label, 'pricking-out', false, tried, least(tried, plants), greatest(0, plants - tried)
        FROM (SELECT k.*, CASE WHEN closed THEN alive ELSE least(alive, gone) END AS tried FROM known k (plant_id, method, label, of_seeds, closed, counted, started, alive, plants, gone, decided)
               WHERE counted > 0 AND (closed OR plants > 0)) c
       WHERE tried > 0)
    SELECT s.plant_id::text AS "plantId", s.method, s.label, s.stage, s.of_seeds AS "ofSeeds", bool_or(v.start_unit IN ('tray', 'pack')) AS "protocolSowsSeeds",
           sum(s.tried)::int AS tried, sum(s.passed)::int AS passed, count(*)::int AS batches, sum(s.over)::int AS over
      FROM stages s
      LEFT JOIN protocol q ON q.nursery_id = ${nurseryId}::uuid AND q.plant_id = s.plant_id AND q.method = s.method AND q.label = s.label
      LEFT JOIN protocol_version v ON v.nursery_id = q.nursery_id AND v.id = q.current_version_id
     GROUP BY s.plant_id, s.method, s.label, s.stage, s.of_seeds
     ORDER BY s.plant_id, s.method, s.label, s.stage`;
}
