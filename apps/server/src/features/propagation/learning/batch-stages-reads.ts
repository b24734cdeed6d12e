import { PROPAGATION_METHODS, STAGE_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../db/sql.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

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
 * How many came up or rooted, and how many of those were potted, by plant, method and the name of the protocol, from what is kept of the entries that
 * stand of each batch (`derive_batch_evidence`).
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
    WITH known AS (
      SELECT b.plant_id, b.method, coalesce(q.label, '') AS label, u.of_seeds, b.closed_on IS NOT NULL AS closed, k.counted_units AS counted,
             CASE WHEN u.of_seeds THEN b.seeds_sown ELSE k.begun_units END AS tried,
             greatest(k.counted_units, k.potted_alive) AS alive, k.potted_plants AS plants,
             k.missing_units + CASE WHEN u.of_seeds THEN k.potted_plants ELSE k.potted_units + k.lost_units END AS gone,
             (b.closed_on IS NOT NULL OR (b.second_winter_on IS NULL AND (k.potted_plants > 0 OR k.first_up_on + g.long_days < ${today}::date)))
               AND (k.counted_units IS NOT NULL OR k.potted_plants > 0 OR NOT k.was_discarded) AS decided
        FROM batch_told b CROSS JOIN LATERAL (SELECT b.unit IN ('tray', 'pack') AS of_seeds) u
        JOIN batch_evidence k ON k.nursery_id = b.nursery_id AND k.batch_id = b.id AND k.speaks
        LEFT JOIN protocol_version v ON v.nursery_id = b.nursery_id AND v.id = b.protocol_version_id
        LEFT JOIN protocol q ON q.nursery_id = v.nursery_id AND q.id = v.protocol_id
        LEFT JOIN protocol_stage g ON g.nursery_id = v.nursery_id AND g.version_id = v.id AND g.kind IN ('emergence', 'rooting')
       WHERE b.nursery_id = ${nurseryId}::uuid AND ${ofPlants(sql`b.plant_id`, plantIds)}),
    stages AS (
      SELECT plant_id, method, label, CASE method WHEN 'seed' THEN 'emergence' ELSE 'rooting' END AS stage, of_seeds, tried, least(tried, coalesce(alive, 0)) AS passed,
             greatest(0, coalesce(alive, 0) - tried) AS over
        FROM known WHERE decided AND tried > 0
      UNION ALL
      SELECT plant_id, method, label, 'pricking-out', false, tried, least(tried, plants), greatest(0, plants - tried)
        FROM (SELECT plant_id, method, label, plants, CASE WHEN closed THEN alive ELSE least(alive, gone) END AS tried FROM known k
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
