import type { StagePlan, TaskBatch, TaskLot } from '@rootclock/domain';
import { Prisma } from '../../../../db/generated/client.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** What stands at places, by lot or batch, with where. */
const standing = (nurseryId: string, holder: 'lot' | 'batch') => {
  const column = holder === 'lot' ? Prisma.sql`a.lot_id` : Prisma.sql`a.batch_id`;
  return Prisma.sql`SELECT ${column} AS id, sum(a.units)::int AS units, array_agg(a.place_id::text ORDER BY a.place_id) AS places FROM account a
    WHERE a.nursery_id = ${nurseryId}::uuid AND a.kind = 'place' AND a.units > 0 AND ${column} IS NOT NULL GROUP BY 1`;
};

type BatchRow = Omit<TaskBatch, 'stages'> & { versionId: string | null };
type LotRow = Omit<TaskLot, 'stages'> & { versionId: string | null };

/** Open batches of which something stands, with the stage they are in. */
export async function readTaskBatches(context: ReadContext): Promise<TaskBatch[]> {
  const { tx, nurseryId } = context;
  const rows = await tx.$queryRaw<BatchRow[]>`
    WITH live AS (${standing(nurseryId, 'batch')})
    SELECT b.id::text, b.code, p.scientific_name AS "plantName", live.places AS "placeIds", live.units, p.dormant_months AS "dormantMonths", b.plant_by_on::text AS "plantByOn",
           b.method, b.unit, b.started_on::text AS "startedOn", b.protocol_version_id::text AS "versionId", b.second_winter_on::text AS "secondWinterOn",
           CASE WHEN b.stage_position IS NULL OR b.protocol_version_id IS NULL THEN NULL ELSE json_build_object('position', b.stage_position, 'begunOn', b.stage_begun_on) END AS stage,
           CASE WHEN b.emerged_on IS NULL THEN NULL ELSE json_build_object('on', b.emerged_on, 'units', b.emerged_units) END AS "lastCount"
      FROM batch b JOIN live ON live.id = b.id JOIN plant p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL`;
  return withStages(context, rows);
}

/**
 * Open lots in pots that were not found to hold, or that must leave their pots by `leaveBy`; mother stock stays where it is. A lot has the protocol of
 * the batch that it was potted from, also where it was split off or merged since, but not once it was potted up: other stages go with another pot.
 */
export async function readTaskLots(context: ReadContext, leaveBy: string): Promise<TaskLot[]> {
  const { tx, nurseryId } = context;
  const rows = await tx.$queryRaw<LotRow[]>`
    WITH RECURSIVE live AS (${standing(nurseryId, 'lot')}),
    mothers AS (SELECT h.lot_id FROM hold h WHERE h.nursery_id = ${nurseryId}::uuid AND h.released_on IS NULL AND h.reason = 'mother-stock'),
    wanted AS MATERIALIZED (
      SELECT l.id, l.code, l.plant_id, l.container_id, l.potted_on, l.ready_on, l.root_checked_on IS NOT NULL AS root_checked, l.plant_by_on, live.units, live.places
        FROM lot l JOIN live ON live.id = l.id JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id AND c.kind <> 'ground'
       WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL AND (l.root_checked_on IS NULL OR l.plant_by_on <= ${leaveBy}::date)
         AND NOT EXISTS (SELECT 1 FROM mothers m WHERE m.lot_id = l.id)),
    kin AS (
      SELECT w.id AS lot_id, w.id AS at_id, w.container_id FROM wanted w WHERE NOT w.root_checked
      UNION
      SELECT k.lot_id, p.id, k.container_id FROM kin k
        JOIN lineage g ON g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = k.at_id AND g.parent_kind = 'lot'
        JOIN lot p ON p.nursery_id = ${nurseryId}::uuid AND p.id = g.parent_id AND p.container_id = k.container_id),
    protocols AS (
      SELECT DISTINCT ON (k.lot_id) k.lot_id, b.protocol_version_id AS version_id FROM kin k
        JOIN lineage g ON g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = k.at_id AND g.parent_kind = 'batch'
        JOIN batch b ON b.nursery_id = ${nurseryId}::uuid AND b.id = g.parent_id AND b.protocol_version_id IS NOT NULL
       ORDER BY k.lot_id, b.started_on DESC, b.id),
    looked AS (
      SELECT s.subject_id AS lot_id, max(e.happened_on) AS looked_on FROM wanted w
        JOIN entry_subject s ON s.nursery_id = ${nurseryId}::uuid AND s.subject_id = w.id AND s.subject_kind = 'lot'
        JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id AND e.kind = 'observe' AND e.cause = 'root-ball'
       WHERE NOT w.root_checked AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
       GROUP BY 1)
    SELECT w.id::text, w.code, p.scientific_name AS "plantName", w.places AS "placeIds", w.units, p.dormant_months AS "dormantMonths",
           CASE WHEN w.plant_by_on <= ${leaveBy}::date THEN w.plant_by_on END::text AS "plantByOn", w.potted_on::text AS "pottedOn", v.version_id::text AS "versionId",
           w.ready_on::text AS "readyOn", w.root_checked AS "rootChecked", k.looked_on::text AS "lookedAtOn"
      FROM wanted w JOIN plant p ON p.nursery_id = ${nurseryId}::uuid AND p.id = w.plant_id
      LEFT JOIN protocols v ON v.lot_id = w.id LEFT JOIN looked k ON k.lot_id = w.id`;
  return withStages(context, rows);
}

async function withStages<Row extends { versionId: string | null }>(context: ReadContext, rows: readonly Row[]): Promise<(Row & { stages: StagePlan[] })[]> {
  const byVersion = await readStages(context, [...new Set(rows.flatMap(({ versionId }) => versionId ?? []))]);
  return rows.map((row) => ({ ...row, stages: byVersion.get(row.versionId ?? '') ?? NONE }));
}

const NONE: StagePlan[] = [];

/** What schedules need of the stages of protocol versions, the old ones too: a batch keeps the one it was started under. */
async function readStages({ tx, nurseryId }: ReadContext, versionIds: readonly string[]): Promise<Map<string, StagePlan[]>> {
  if (versionIds.length === 0) return new Map();
  const rows = await tx.$queryRaw<{ versionId: string; stages: StagePlan[] }[]>`
    SELECT g.version_id::text AS "versionId", json_agg(json_build_object('kind', g.kind, 'shortDays', g.short_days, 'usualDays', g.usual_days, 'longDays', g.long_days,
             'share', g.share, 'season', CASE WHEN g.season_from_md IS NULL THEN NULL ELSE json_build_object('fromMd', g.season_from_md, 'toMd', g.season_to_md) END,
             'rests', g.rests) ORDER BY g.position) AS stages
      FROM protocol_stage g WHERE g.nursery_id = ${nurseryId}::uuid AND g.version_id = ANY (${[...versionIds]}::uuid[]) GROUP BY 1`;
  return new Map(rows.map(({ versionId, stages }) => [versionId, stages]));
}
