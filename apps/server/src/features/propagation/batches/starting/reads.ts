import { CONTAINER_KINDS, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** Packs of a plant that stand in stratification and can be drawn from. */
export const standingPacks = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  sourceId: z.string(),
  units: z.number(),
  placeCodes: z.array(z.string()),
  startedOn: z.string(),
  seedsSown: z.nullable(z.number()),
  stageDueOn: z.nullable(z.string()),
});
export type StandingPacks = z.infer<typeof standingPacks>;

export async function readStandingPacks({ tx, nurseryId }: ReadContext, plantId: string): Promise<StandingPacks[]> {
  return tx.rows(standingPacks)`
    SELECT b.id::text AS "batchId", b.code, b.source_id::text AS "sourceId", s.units, s.places AS "placeCodes", b.started_on::text AS "startedOn", b.seeds_sown AS "seedsSown",
           b.stage_due_on::text AS "stageDueOn"
      FROM batch_told b
      JOIN LATERAL (SELECT sum(a.units)::int AS units, array_agg(w.code ORDER BY w.code) AS places FROM units_standing a JOIN place_named w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                     WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0) s ON s.units > 0
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.plant_id = ${plantId}::uuid AND b.unit = 'pack' AND b.closed_on IS NULL
     ORDER BY b.started_on, b.code`;
}

export const startContainer = z.strictObject({
  id: z.string(),
  name: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  cells: z.nullable(z.number()),
  volumeMl: z.nullable(z.number()),
});
export type StartContainer = z.infer<typeof startContainer>;

export async function readContainers(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<StartContainer[]> {
  return tx.rows(startContainer)`
    SELECT id::text, name, kind, cells, volume_ml AS "volumeMl" FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[]) AND retired_at IS NULL`;
}

const sourceOffered = z.strictObject({ id: z.string() });

export async function readSourceIds({ tx, nurseryId }: ReadContext, plantId: string): Promise<string[]> {
  const rows = await tx.rows(
    sourceOffered,
  )`SELECT id::text FROM source_named WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid AND retired_at IS NULL ORDER BY code`;
  return rows.map(({ id }) => id);
}

/** What of a plant decides which pot-life rules reach it. */
export const plantReach = z.strictObject({
  scientificName: z.string(),
  genus: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  dormantMonths: z.array(z.number()),
});
export type PlantReach = z.infer<typeof plantReach>;

export async function readPlantReach({ tx, nurseryId }: ReadContext, plantId: string): Promise<PlantReach | undefined> {
  const row = await tx.row(plantReach)`
    SELECT scientific_name AS "scientificName", genus, root_habit AS "rootHabit", dormant_months AS "dormantMonths" FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid`;
  return row;
}
