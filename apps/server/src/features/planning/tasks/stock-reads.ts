import {
  BATCH_UNITS,
  PROPAGATION_METHODS,
  STAGE_KINDS,
  type StagePlan,
  type TaskBatch,
  type TaskLot,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql } from '../../../db/sql.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

/** What stands at places, by lot or batch, with where. */
const standing = (nurseryId: string, holder: 'lot' | 'batch') => {
  const column = holder === 'lot' ? sql`a.lot_id` : sql`a.batch_id`;
  return sql`SELECT ${column} AS id, sum(a.units)::int AS units, array_agg(a.place_id::text ORDER BY a.place_id) AS places FROM units_standing a
    WHERE a.nursery_id = ${nurseryId}::uuid AND a.kind = 'place' AND a.units > 0 AND ${column} IS NOT NULL GROUP BY 1`;
};

const batchRow = z.strictObject({
  id: z.string(),
  units: z.number(),
  code: z.string(),
  dormantMonths: z.array(z.number()),
  method: z.enum(PROPAGATION_METHODS),
  unit: z.enum(BATCH_UNITS),
  startedOn: z.string(),
  stage: z.nullable(z.strictObject({ position: z.number(), begunOn: z.string() })),
  secondWinterOn: z.nullable(z.string()),
  lastCount: z.nullable(z.strictObject({ on: z.string(), units: z.number() })),
  plantName: z.string(),
  placeIds: z.array(z.string()),
  plantByOn: z.nullable(z.string()),
  versionId: z.nullable(z.string()),
});

/** Open batches of which something stands, with the stage they are in. */
export async function readTaskBatches(context: ReadContext): Promise<TaskBatch[]> {
  const { tx, nurseryId } = context;
  const rows = await tx.rows(batchRow)`
    WITH live AS (${standing(nurseryId, 'batch')})
    SELECT b.id::text, b.code, p.scientific_name AS "plantName", live.places AS "placeIds", live.units, p.dormant_months AS "dormantMonths", b.plant_by_on::text AS "plantByOn",
           b.method, b.unit, b.started_on::text AS "startedOn", b.protocol_version_id::text AS "versionId", b.second_winter_on::text AS "secondWinterOn",
           CASE WHEN b.stage_position IS NULL OR b.protocol_version_id IS NULL THEN NULL ELSE json_build_object('position', b.stage_position, 'begunOn', b.stage_begun_on) END AS stage,
           CASE WHEN b.emerged_on IS NULL THEN NULL ELSE json_build_object('on', b.emerged_on, 'units', b.emerged_units) END AS "lastCount"
      FROM batch_told b JOIN live ON live.id = b.id JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.closed_on IS NULL`;
  return withStages(context, rows);
}

const standingLot = z.strictObject({
  id: z.string(),
  units: z.number(),
  code: z.string(),
  dormantMonths: z.array(z.number()),
  plantName: z.string(),
  placeIds: z.array(z.string()),
  plantByOn: z.nullable(z.string()),
  pottedOn: z.string(),
  readyOn: z.nullable(z.string()),
  rootChecked: z.boolean(),
});

/**
 * Open lots in pots that were not found to hold, or that must leave their pots by `leaveBy`; mother stock stays where it is. What else is known of them is
 * read by statements of their own and put together here: in one statement the planner takes two thousand lots for a few and looks each up anew.
 */
export async function readTaskLots(
  context: ReadContext,
  { leaveBy, lookedSince }: { leaveBy: string; lookedSince: string },
): Promise<TaskLot[]> {
  const { tx, nurseryId } = context;
  const rows = await tx.rows(standingLot)`
    WITH live AS MATERIALIZED (${standing(nurseryId, 'lot')})
    SELECT l.id::text, l.code, p.scientific_name AS "plantName", live.places AS "placeIds", live.units, p.dormant_months AS "dormantMonths",
           CASE WHEN l.plant_by_on <= ${leaveBy}::date THEN l.plant_by_on END::text AS "plantByOn", l.potted_on::text AS "pottedOn",
           -- What came in standing is expected to be ready from the first; nobody named a day on which to look.
           CASE WHEN l.ready_on = l.potted_on AND (SELECT e.kind IN ('opening', 'receive', 'split', 'merge') FROM entry_told e WHERE e.nursery_id = l.nursery_id AND e.id = l.created_entry_id)
             THEN NULL ELSE l.ready_on END::text AS "readyOn",
           l.root_checked_on IS NOT NULL AS "rootChecked"
      FROM lot_told l JOIN live ON live.id = l.id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id AND c.kind <> 'ground'
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL AND (l.root_checked_on IS NULL OR l.plant_by_on <= ${leaveBy}::date)
       AND NOT EXISTS (SELECT 1 FROM lot_held h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.reason = 'mother-stock')`;
  const versions = await readVersionsOfLots(context);
  const looked = await readLooks(context, lookedSince);
  return withStages(
    context,
    rows.map((row) => ({ ...row, versionId: versions.get(row.id) ?? null, lookedAtOn: looked.get(row.id) ?? null })),
  );
}

const lotVersion = z.strictObject({ lotId: z.string(), versionId: z.string() });

/**
 * The protocol that open lots were potted under, by lot: that of the batch they come from, also where they were split off or merged since, but not once
 * they were potted up, since other stages go with another pot.
 */
async function readVersionsOfLots({ tx, nurseryId }: ReadContext): Promise<Map<string, string>> {
  const rows = await tx.rows(lotVersion)`
    WITH RECURSIVE kin AS (
      SELECT l.id AS lot_id, l.id AS at_id, l.container_id FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND l.closed_on IS NULL AND l.root_checked_on IS NULL
      UNION
      SELECT k.lot_id, p.id, k.container_id FROM kin k
        JOIN lineage_told g ON g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = k.at_id AND g.parent_kind = 'lot'
        JOIN lot_named p ON p.nursery_id = ${nurseryId}::uuid AND p.id = g.parent_id AND p.container_id = k.container_id)
    SELECT DISTINCT ON (k.lot_id) k.lot_id::text AS "lotId", b.protocol_version_id::text AS "versionId" FROM kin k
      JOIN lineage_told g ON g.nursery_id = ${nurseryId}::uuid AND g.child_lot_id = k.at_id AND g.parent_kind = 'batch'
      JOIN batch_named b ON b.nursery_id = ${nurseryId}::uuid AND b.id = g.parent_id AND b.protocol_version_id IS NOT NULL
     ORDER BY k.lot_id, b.started_on DESC, b.id`;
  return new Map(rows.map(({ lotId, versionId }) => [lotId, versionId]));
}

const lastLook = z.strictObject({ lotId: z.string(), on: z.string() });

/** The last day since `since` on which somebody looked at the root balls of a lot. */
async function readLooks({ tx, nurseryId }: ReadContext, since: string): Promise<Map<string, string>> {
  const rows = await tx.rows(lastLook)`
    SELECT s.subject_id::text AS "lotId", max(e.happened_on)::text AS on FROM entry_told e
      JOIN entry_about s ON s.nursery_id = e.nursery_id AND s.entry_id = e.id AND s.subject_kind = 'lot'
     WHERE e.nursery_id = ${nurseryId}::uuid AND e.happened_on >= ${since}::date AND e.kind = 'observe' AND e.cause = 'root-ball'
       AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
     GROUP BY 1`;
  return new Map(rows.map(({ lotId, on }) => [lotId, on]));
}

async function withStages<Row extends { versionId: string | null }>(
  context: ReadContext,
  rows: readonly Row[],
): Promise<(Row & { stages: StagePlan[] })[]> {
  const byVersion = await readStages(context, [...new Set(rows.flatMap(({ versionId }) => versionId ?? []))]);
  return rows.map((row) => ({ ...row, stages: byVersion.get(row.versionId ?? '') ?? NONE }));
}

const NONE: StagePlan[] = [];

const versionStages = z.strictObject({
  versionId: z.string(),
  stages: z.array(
    z.strictObject({
      kind: z.enum(STAGE_KINDS),
      shortDays: z.number(),
      usualDays: z.number(),
      longDays: z.number(),
      share: z.number(),
      season: z.nullable(z.strictObject({ fromMd: z.string(), toMd: z.string() })),
      rests: z.boolean(),
    }),
  ),
});

/** What schedules need of the stages of protocol versions, the old ones too: a batch keeps the one it was started under. */
async function readStages(
  { tx, nurseryId }: ReadContext,
  versionIds: readonly string[],
): Promise<Map<string, StagePlan[]>> {
  if (versionIds.length === 0) return new Map();
  const rows = await tx.rows(versionStages)`
    SELECT g.version_id::text AS "versionId", json_agg(json_build_object('kind', g.kind, 'shortDays', g.short_days, 'usualDays', g.usual_days, 'longDays', g.long_days,
             'share', g.share, 'season', CASE WHEN g.season_from_md IS NULL THEN NULL ELSE json_build_object('fromMd', g.season_from_md, 'toMd', g.season_to_md) END,
             'rests', g.rests) ORDER BY g.position) AS stages
      FROM stage_told g WHERE g.nursery_id = ${nurseryId}::uuid AND g.version_id = ANY (${[...versionIds]}::uuid[]) GROUP BY 1`;
  return new Map(rows.map(({ versionId, stages }) => [versionId, stages]));
}
