import { PROPAGATION_METHODS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../../trpc/operation.ts';
import type { ReferenceRow } from './rows.ts';

export const knownProtocol = z.strictObject({
  protocolId: z.string(),
  plantId: z.string(),
  method: z.enum(PROPAGATION_METHODS),
  label: z.string(),
});
export type KnownProtocol = z.infer<typeof knownProtocol>;

const knownRow = z.strictObject({ id: z.string() });

/** What a nursery has already: its plants, and its protocols, retired ones included. */
export async function loadKnown({
  tx,
  nurseryId,
}: ReadContext): Promise<{ plantIds: Set<string>; protocols: KnownProtocol[] }> {
  const plants = await tx.rows(
    knownRow,
  )`SELECT id::text FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND retired_at IS NULL`;
  const protocols = await tx.rows(
    knownProtocol,
  )`SELECT id::text AS "protocolId", plant_id::text AS "plantId", method, label FROM protocol WHERE nursery_id = ${nurseryId}::uuid`;
  return { plantIds: new Set(plants.map(({ id }) => id)), protocols };
}

/** Adds protocols, each with its first version, one statement a table. */
export async function insertReferenceRows(
  { tx, nurseryId, today }: CommandContext,
  rows: readonly ReferenceRow[],
): Promise<void> {
  const json = JSON.stringify(rows);
  await tx.run`
    INSERT INTO protocol (nursery_id, id, plant_id, method)
    SELECT ${nurseryId}::uuid, r."protocolId", r."plantId", r.method FROM jsonb_to_recordset(${json}::jsonb) AS r ("protocolId" uuid, "plantId" uuid, method text)`;
  await tx.run`
    INSERT INTO protocol_version (nursery_id, id, protocol_id, number, made_on, seeds_per_cell, start_unit, start_container_id, target_container_id, texts, standing, source)
    SELECT ${nurseryId}::uuid, r."versionId", r."protocolId", 1, ${today}::date, r."seedsPerCell", r."startUnit", r."startContainerId", r."targetContainerId", r.texts, r.standing, r.source
      FROM jsonb_to_recordset(${json}::jsonb) AS r ("versionId" uuid, "protocolId" uuid, "seedsPerCell" int, "startUnit" text, "startContainerId" uuid, "targetContainerId" uuid, texts jsonb,
           standing text, source text)`;
  await tx.run`
    INSERT INTO protocol_stage (nursery_id, version_id, position, kind, short_days, usual_days, long_days, duration_standing, duration_source, share, share_standing, share_source,
                                season_from_md, season_to_md, rests, temperature_low_c, temperature_high_c, light, depth_mm, medium, container_id, note)
    SELECT ${nurseryId}::uuid, s."versionId", s.position, s.kind, s."shortDays", s."usualDays", s."longDays", s."durationStanding", s."durationSource", s.share, s."shareStanding", s."shareSource",
           s.season->>'fromMd', s.season->>'toMd', s.rests, s."temperatureLowC", s."temperatureHighC", s.light, s."depthMm", s.medium, s."containerId", s.note
      FROM jsonb_to_recordset(${JSON.stringify(rows.flatMap((row) => row.stages))}::jsonb) AS s ("versionId" uuid, position int, kind text, "shortDays" int, "usualDays" int, "longDays" int,
           "durationStanding" text, "durationSource" text, share numeric, "shareStanding" text, "shareSource" text, season jsonb, rests boolean, "temperatureLowC" numeric,
           "temperatureHighC" numeric, light text, "depthMm" int, medium text, "containerId" uuid, note text)`;
  await tx.run`
    UPDATE protocol q SET current_version_id = r."versionId" FROM jsonb_to_recordset(${json}::jsonb) AS r ("protocolId" uuid, "versionId" uuid)
     WHERE q.nursery_id = ${nurseryId}::uuid AND q.id = r."protocolId"`;
}
