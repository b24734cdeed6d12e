import {
  BATCH_UNITS,
  PROPAGATION_METHODS,
  STAGE_KINDS,
  STANDINGS,
  type PropagationMethod,
  type ProtocolPlan,
  type Standing,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../db/sql.ts';
import { found, refuse } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import type { ProtocolContent } from './draft.ts';

/**
 * A stage as a version keeps it. What comes up of seed (`emergence`) is a share of the seeds, as published germination figures are; with several
 * seeds to a cell more cells than that come up. Every other share is one of units: cells, pieces, plants.
 */
export const storedStage = z.strictObject({
  durationStanding: z.enum(STANDINGS),
  durationSource: z.nullable(z.string()),
  shareStanding: z.enum(STANDINGS),
  shareSource: z.nullable(z.string()),
  temperatureLowC: z.nullable(z.number()),
  temperatureHighC: z.nullable(z.number()),
  light: z.string(),
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
  position: z.number(),
});
export type StoredStage = z.infer<typeof storedStage>;

/** One version of a protocol, which never changes once it is written. */
export const protocolVersion = z.strictObject({
  versionId: z.string(),
  protocolId: z.string(),
  number: z.number(),
  plantId: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
  isCurrent: z.boolean(),
  startUnit: z.enum(BATCH_UNITS),
  startContainerId: z.nullable(z.string()),
  targetContainerId: z.nullable(z.string()),
  seedsPerCell: z.nullable(z.number()),
  /** The plant's, in which stages that rest make no headway. */
  dormantMonths: z.array(z.number()),
  stages: z.array(storedStage),
});
export type ProtocolVersion = z.infer<typeof protocolVersion>;

const selectVersions = (where: Sql) => sql`
  SELECT v.id::text AS "versionId", v.protocol_id::text AS "protocolId", v.number, q.plant_id::text AS "plantId", q.method, q.label, q.current_version_id = v.id AS "isCurrent",
         v.start_unit AS "startUnit", v.start_container_id::text AS "startContainerId", v.target_container_id::text AS "targetContainerId", v.seeds_per_cell AS "seedsPerCell",
         p.dormant_months AS "dormantMonths", s.stages
    FROM protocol_version v
    JOIN protocol q ON q.nursery_id = v.nursery_id AND q.id = v.protocol_id
    JOIN plant_named p ON p.nursery_id = q.nursery_id AND p.id = q.plant_id
    JOIN LATERAL (
      SELECT coalesce(jsonb_agg(jsonb_build_object(
               'position', g.position, 'kind', g.kind, 'shortDays', g.short_days, 'usualDays', g.usual_days, 'longDays', g.long_days,
               'durationStanding', g.duration_standing, 'durationSource', g.duration_source, 'share', g.share, 'shareStanding', g.share_standing, 'shareSource', g.share_source,
               'season', CASE WHEN g.season_from_md IS NULL THEN NULL ELSE jsonb_build_object('fromMd', g.season_from_md, 'toMd', g.season_to_md) END, 'rests', g.rests,
               'temperatureLowC', g.temperature_low_c, 'temperatureHighC', g.temperature_high_c, 'light', g.light, 'depthMm', g.depth_mm, 'medium', g.medium,
               'containerId', g.container_id, 'note', g.note) ORDER BY g.position), '[]') AS stages
        FROM protocol_stage g WHERE g.nursery_id = v.nursery_id AND g.version_id = v.id) s ON true
   WHERE ${where}`;

/** A version by id; one that is not this nursery's answers as not found. Versions that are no longer current, and of retired protocols, are found too. */
export async function loadProtocolVersion(
  { tx, nurseryId }: ReadContext,
  versionId: string,
  field = 'protocolVersionId',
): Promise<ProtocolVersion> {
  const row = await tx.row(protocolVersion)(
    selectVersions(sql`v.nursery_id = ${nurseryId}::uuid AND v.id = ${versionId}::uuid`),
  );
  return found(row, 'protocol', field);
}

/** The current versions of protocols that are not retired, by plant, method and label: all of them, or those of some plants. */
export async function loadCurrentVersions(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<ProtocolVersion[]> {
  const ofPlants = plantIds === 'all' ? sql`true` : sql`q.plant_id = ANY (${[...plantIds]}::uuid[])`;
  return tx.rows(protocolVersion)(sql`
    ${selectVersions(sql`v.nursery_id = ${nurseryId}::uuid AND q.current_version_id = v.id AND q.retired_at IS NULL AND ${ofPlants}`)} ORDER BY q.plant_id, q.method, q.label`);
}

/** The same of protocols in use or of retired ones, for the list. */
export async function loadVersionsInUse(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[],
  retired: boolean,
): Promise<ProtocolVersion[]> {
  return tx.rows(protocolVersion)(sql`
    ${selectVersions(sql`v.nursery_id = ${nurseryId}::uuid AND q.current_version_id = v.id AND (q.retired_at IS NOT NULL) = ${retired} AND q.plant_id = ANY (${[...plantIds]}::uuid[])`)}
    ORDER BY q.method, q.label`);
}

/** What schedules and yields are reckoned from. */
export const planOf = ({ stages, dormantMonths }: ProtocolVersion): ProtocolPlan => ({ stages, dormantMonths });

/** What commands need to know of a protocol before they change it. */
export const protocolFacts = z.strictObject({
  protocolId: z.string(),
  plantId: z.string(),
  scientificName: z.string(),
  dormantMonths: z.array(z.number()),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
  isRetired: z.boolean(),
  currentVersionId: z.string(),
  currentNumber: z.number(),
  currentMadeOn: z.string(),
});
export type ProtocolFacts = z.infer<typeof protocolFacts>;

export async function loadProtocol({ tx, nurseryId }: ReadContext, protocolId: string): Promise<ProtocolFacts> {
  const row = await tx.row(protocolFacts)`
    SELECT q.id::text AS "protocolId", q.plant_id::text AS "plantId", p.scientific_name AS "scientificName", p.dormant_months AS "dormantMonths", q.method, q.label,
           q.retired_at IS NOT NULL AS "isRetired", v.id::text AS "currentVersionId", v.number AS "currentNumber", v.made_on::text AS "currentMadeOn"
      FROM protocol q
      JOIN plant_named p ON p.nursery_id = q.nursery_id AND p.id = q.plant_id
      JOIN protocol_version v ON v.nursery_id = q.nursery_id AND v.id = q.current_version_id
     WHERE q.nursery_id = ${nurseryId}::uuid AND q.id = ${protocolId}::uuid`;
  return found(row, 'protocol', 'protocolId');
}

const storedTexts = z.strictObject({
  texts: z.strictObject({
    collection: z.string(),
    processing: z.string(),
    prePlanting: z.string(),
    growingArea: z.string(),
    establishment: z.string(),
    activeGrowth: z.string(),
    hardening: z.string(),
    harvest: z.string(),
    storage: z.string(),
    otherNotes: z.string(),
    references: z.string(),
  }),
});

/** The texts of a version, which no schedule needs. */
export async function loadTexts({ tx, nurseryId }: ReadContext, versionId: string): Promise<ProtocolContent['texts']> {
  const row = await tx.row(
    storedTexts,
  )`SELECT texts FROM protocol_version WHERE nursery_id = ${nurseryId}::uuid AND id = ${versionId}::uuid`;
  return found(row, 'protocol', 'versionId').texts;
}

const twinRow = z.strictObject({ isRetired: z.boolean() });

/** The protocol of a plant for a method under a label, retired ones too: two of them could not be told apart. */
export async function findTwin(
  { tx, nurseryId }: ReadContext,
  plantId: string,
  method: PropagationMethod,
  label: string,
): Promise<{ isRetired: boolean } | null> {
  const row = await tx.row(twinRow)`
    SELECT retired_at IS NOT NULL AS "isRetired" FROM protocol
     WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid AND method = ${method} AND lower(label) = lower(${label})`;
  return row ?? null;
}

export async function insertProtocol(
  { tx, nurseryId }: CommandContext,
  { protocolId, plantId, method, label }: Pick<ProtocolFacts, 'protocolId' | 'plantId' | 'method' | 'label'>,
): Promise<void> {
  const added = await tx.run`
    INSERT INTO protocol (nursery_id, id, plant_id, method, label) VALUES (${nurseryId}::uuid, ${protocolId}::uuid, ${plantId}::uuid, ${method}, ${label}) ON CONFLICT DO NOTHING`;
  if (added === 0) refuse('id-taken', { what: 'protocol' }, 'protocolId');
}

export interface NewVersion extends ProtocolContent {
  versionId: string;
  protocolId: string;
  number: number;
  standing: Standing;
  source: string | null;
  changeNote: string;
}

/** Writes a version and makes it the current one; those before it stay as they are. */
export async function insertVersion(
  { tx, nurseryId, personId, today }: CommandContext,
  version: NewVersion,
): Promise<void> {
  const added = await tx.run`
    INSERT INTO protocol_version (nursery_id, id, protocol_id, number, made_on, person_id, seeds_per_cell, start_unit, start_container_id, target_container_id, texts, standing, source, change_note)
    VALUES (${nurseryId}::uuid, ${version.versionId}::uuid, ${version.protocolId}::uuid, ${version.number}, ${today}::date, ${personId}::uuid, ${version.seedsPerCell}::int, ${version.startUnit},
            ${version.startContainerId}::uuid, ${version.targetContainerId}::uuid, ${JSON.stringify(version.texts)}::jsonb, ${version.standing}, ${version.source}, ${version.changeNote})
    ON CONFLICT DO NOTHING`;
  if (added === 0) refuse('id-taken', { what: 'protocol version' }, 'versionId');
  await tx.run`
    INSERT INTO protocol_stage (nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, duration_source, share, share_standing, share_source,
                                season_from_md, season_to_md, rests, temperature_low_c, temperature_high_c, light, depth_mm, medium, container_id, note)
    SELECT ${nurseryId}::uuid, ${version.versionId}::uuid, s.position, s.kind, s."shortDays", s."usualDays", s."longDays", s."durationStanding", s."durationSource", s.share, s."shareStanding",
           s."shareSource", s.season->>'fromMd', s.season->>'toMd', s.rests, s."temperatureLowC", s."temperatureHighC", s.light, s."depthMm", s.medium, s."containerId", s.note
      FROM jsonb_to_recordset(${JSON.stringify(version.stages.map((stage, position) => ({ ...stage, position })))}::jsonb) AS s (position int, kind text, "shortDays" int, "usualDays" int,
           "longDays" int, "durationStanding" text, "durationSource" text, share numeric, "shareStanding" text, "shareSource" text, season jsonb, rests boolean, "temperatureLowC" numeric,
           "temperatureHighC" numeric, light text, "depthMm" int, medium text, "containerId" uuid, note text)`;
  await tx.run`UPDATE protocol SET current_version_id = ${version.versionId}::uuid WHERE nursery_id = ${nurseryId}::uuid AND id = ${version.protocolId}::uuid`;
}

export async function markProtocolRetired(
  { tx, nurseryId }: CommandContext,
  protocolId: string,
  at: Date | null,
): Promise<void> {
  await tx.run`UPDATE protocol SET retired_at = ${at}::timestamptz WHERE nursery_id = ${nurseryId}::uuid AND id = ${protocolId}::uuid`;
}
