import type { BatchUnit, PropagationMethod, ProtocolPlan, StageDetail } from '@rootclock/domain';
import { Prisma } from '../../../db/generated/client.ts';
import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

/**
 * A stage as a version keeps it. What comes up of seed (`emergence`) is a share of the seeds, as published germination figures are; with several
 * seeds to a cell more cells than that come up. Every other share is one of units: cells, pieces, plants.
 */
export interface StoredStage extends StageDetail {
  position: number;
}

/** One version of a protocol, which never changes once it is written. */
export interface ProtocolVersion {
  versionId: string;
  protocolId: string;
  number: number;
  plantId: string;
  method: PropagationMethod;
  label: string;
  isCurrent: boolean;
  startUnit: BatchUnit;
  startContainerId: string | null;
  targetContainerId: string | null;
  seedsPerCell: number | null;
  /** The plant's, in which stages that rest make no headway. */
  dormantMonths: number[];
  stages: StoredStage[];
}

const selectVersions = (where: Prisma.Sql) => Prisma.sql`
  SELECT v.id::text AS "versionId", v.protocol_id::text AS "protocolId", v.number, q.plant_id::text AS "plantId", q.method, q.label, q.current_version_id = v.id AS "isCurrent",
         v.start_unit AS "startUnit", v.start_container_id::text AS "startContainerId", v.target_container_id::text AS "targetContainerId", v.seeds_per_cell AS "seedsPerCell",
         p.dormant_months AS "dormantMonths", s.stages
    FROM protocol_version v
    JOIN protocol q ON q.nursery_id = v.nursery_id AND q.id = v.protocol_id
    JOIN plant p ON p.nursery_id = q.nursery_id AND p.id = q.plant_id
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
export async function loadProtocolVersion({ tx, nurseryId }: ReadContext, versionId: string, field = 'protocolVersionId'): Promise<ProtocolVersion> {
  const [row] = await tx.$queryRaw<ProtocolVersion[]>(selectVersions(Prisma.sql`v.nursery_id = ${nurseryId}::uuid AND v.id = ${versionId}::uuid`));
  return found(row, 'protocol', field);
}

/** The current versions of protocols that are not retired, by plant, method and label: all of them, or those of some plants. */
export async function loadCurrentVersions({ tx, nurseryId }: ReadContext, plantIds: readonly string[] | 'all'): Promise<ProtocolVersion[]> {
  const ofPlants = plantIds === 'all' ? Prisma.sql`true` : Prisma.sql`q.plant_id = ANY (${[...plantIds]}::uuid[])`;
  return tx.$queryRaw<ProtocolVersion[]>(Prisma.sql`
    ${selectVersions(Prisma.sql`v.nursery_id = ${nurseryId}::uuid AND q.current_version_id = v.id AND q.retired_at IS NULL AND ${ofPlants}`)} ORDER BY q.plant_id, q.method, q.label`);
}

/** What schedules and yields are reckoned from. */
export const planOf = ({ stages, dormantMonths }: ProtocolVersion): ProtocolPlan => ({ stages, dormantMonths });

