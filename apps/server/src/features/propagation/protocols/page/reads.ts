import { BATCH_UNITS, PROPAGATION_METHODS, STAGE_KINDS, STAGE_LIGHTS, STANDINGS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../../../refusal.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';

const head = z.strictObject({
  protocolId: z.string(),
  plant: z.strictObject({
    plantId: z.string(),
    code: z.string(),
    scientificName: z.string(),
    vernacularName: z.string(),
    dormantMonths: z.array(z.number()),
  }),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
  isRetired: z.boolean(),
  currentVersionId: z.string(),
});
type Head = z.infer<typeof head>;

export async function readHead({ tx, nurseryId }: ReadContext, protocolId: string): Promise<Head> {
  const row = await tx.row(head)`
    SELECT q.id::text AS "protocolId", q.method, q.label, q.retired_at IS NOT NULL AS "isRetired", q.current_version_id::text AS "currentVersionId",
           jsonb_build_object('plantId', p.id, 'code', p.code, 'scientificName', p.scientific_name, 'vernacularName', p.vernacular_name, 'dormantMonths', p.dormant_months) AS plant
      FROM protocol q JOIN plant_named p ON p.nursery_id = q.nursery_id AND p.id = q.plant_id
     WHERE q.nursery_id = ${nurseryId}::uuid AND q.id = ${protocolId}::uuid`;
  return found(row, 'protocol', 'protocolId');
}

const protocolVersion = z.strictObject({
  versionId: z.string(),
  number: z.number(),
  madeOn: z.string(),
  personName: z.nullable(z.string()),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
  changeNote: z.string(),
  startUnit: z.enum(BATCH_UNITS),
  startContainer: z.nullable(z.strictObject({ id: z.string(), name: z.string() })),
  targetContainer: z.nullable(z.strictObject({ id: z.string(), name: z.string() })),
  seedsPerCell: z.nullable(z.number()),
  stages: z.array(
    z.strictObject({
      position: z.number(),
      light: z.enum(STAGE_LIGHTS),
      containerName: z.nullable(z.string()),
      durationStanding: z.enum(STANDINGS),
      durationSource: z.nullable(z.string()),
      shareStanding: z.enum(STANDINGS),
      shareSource: z.nullable(z.string()),
      temperatureLowC: z.nullable(z.number()),
      temperatureHighC: z.nullable(z.number()),
      depthMm: z.nullable(z.number()),
      medium: z.string(),
      containerId: z.nullable(z.string()),
      note: z.string(),
      kind: z.enum(STAGE_KINDS),
      shortDays: z.number(),
      usualDays: z.number(),
      longDays: z.number(),
      share: z.number(),
      season: z.nullable(z.strictObject({ fromMd: z.string(), toMd: z.string() })),
      rests: z.boolean(),
    }),
  ),
  texts: z.record(z.string(), z.string()),
  batches: z.number(),
  openBatches: z.number(),
});

/** The versions of a protocol by their numbers, the newest first, each with all it says: a protocol has few. */
export const readVersions = ({ tx, nurseryId }: ReadContext, protocolId: string) => tx.rows(protocolVersion)`
  SELECT v.id::text AS "versionId", v.number, v.made_on::text AS "madeOn", n.name AS "personName", v.standing, v.source, v.change_note AS "changeNote", v.start_unit AS "startUnit",
         CASE WHEN c.id IS NULL THEN NULL ELSE jsonb_build_object('id', c.id, 'name', c.name) END AS "startContainer",
         CASE WHEN t.id IS NULL THEN NULL ELSE jsonb_build_object('id', t.id, 'name', t.name) END AS "targetContainer",
         v.seeds_per_cell AS "seedsPerCell", v.texts, s.stages, b.batches, b.open AS "openBatches"
    FROM protocol_version v
    LEFT JOIN nursery_people() n ON n.person_id = v.person_id
    LEFT JOIN container_named c ON c.nursery_id = v.nursery_id AND c.id = v.start_container_id
    LEFT JOIN container_named t ON t.nursery_id = v.nursery_id AND t.id = v.target_container_id
    JOIN LATERAL (
      SELECT coalesce(jsonb_agg(jsonb_build_object(
               'position', g.position, 'kind', g.kind, 'shortDays', g.short_days, 'usualDays', g.usual_days, 'longDays', g.long_days,
               'durationStanding', g.duration_standing, 'durationSource', g.duration_source, 'share', g.share, 'shareStanding', g.share_standing, 'shareSource', g.share_source,
               'season', CASE WHEN g.season_from_md IS NULL THEN NULL ELSE jsonb_build_object('fromMd', g.season_from_md, 'toMd', g.season_to_md) END, 'rests', g.rests,
               'temperatureLowC', g.temperature_low_c, 'temperatureHighC', g.temperature_high_c, 'light', g.light, 'depthMm', g.depth_mm, 'medium', g.medium,
               'containerId', g.container_id, 'containerName', k.name, 'note', g.note) ORDER BY g.position), '[]') AS stages
        FROM protocol_stage g LEFT JOIN container_named k ON k.nursery_id = g.nursery_id AND k.id = g.container_id
       WHERE g.nursery_id = v.nursery_id AND g.version_id = v.id) s ON true
    JOIN LATERAL (SELECT count(*)::int AS batches, count(*) FILTER (WHERE b.closed_on IS NULL)::int AS open
                    FROM batch_named b WHERE b.nursery_id = v.nursery_id AND b.protocol_version_id = v.id) b ON true
   WHERE v.nursery_id = ${nurseryId}::uuid AND v.protocol_id = ${protocolId}::uuid
   ORDER BY v.number DESC`;

const batchUnderProtocol = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  versionNumber: z.number(),
  startedOn: z.string(),
  closedOn: z.nullable(z.string()),
  startedUnits: z.number(),
  unit: z.enum(BATCH_UNITS),
  emergedUnits: z.nullable(z.number()),
});

export const readBatches = ({ tx, nurseryId }: ReadContext, protocolId: string) => tx.rows(batchUnderProtocol)`
  SELECT b.id::text AS "batchId", b.code, v.number AS "versionNumber", b.started_on::text AS "startedOn", b.closed_on::text AS "closedOn", b.unit, b.emerged_units AS "emergedUnits",
         coalesce((SELECT sum(m.to_units)::int FROM movement_told m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id), 0) AS "startedUnits"
    FROM batch_told b JOIN protocol_version v ON v.nursery_id = b.nursery_id AND v.id = b.protocol_version_id
   WHERE b.nursery_id = ${nurseryId}::uuid AND v.protocol_id = ${protocolId}::uuid
   ORDER BY b.started_on DESC, b.code DESC LIMIT 50`;

const letterhead = z.strictObject({ nurseryName: z.string(), units: z.enum(['metric', 'us']) });

/** What stands at the head of a printed page. */
export async function readLetterhead({
  tx,
  nurseryId,
}: ReadContext): Promise<{ nurseryName: string; units: 'metric' | 'us' }> {
  const row = await tx.row(
    letterhead,
  )`SELECT name AS "nurseryName", units FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return found(row, 'nursery');
}
