import type { ContainerKind, RootHabit } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** Packs of a plant that stand in stratification and can be drawn from. */
export interface StandingPacks {
  batchId: string;
  code: string;
  sourceId: string;
  units: number;
  placeCodes: string[];
  startedOn: string;
  seedsSown: number | null;
  stageDueOn: string | null;
}

export async function readStandingPacks({ tx, nurseryId }: ReadContext, plantId: string): Promise<StandingPacks[]> {
  return tx.$queryRaw<StandingPacks[]>`
    SELECT b.id::text AS "batchId", b.code, b.source_id::text AS "sourceId", s.units, s.places AS "placeCodes", b.started_on::text AS "startedOn", b.seeds_sown AS "seedsSown",
           b.stage_due_on::text AS "stageDueOn"
      FROM batch b
      JOIN LATERAL (SELECT sum(a.units)::int AS units, array_agg(w.code ORDER BY w.code) AS places FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                     WHERE a.nursery_id = b.nursery_id AND a.batch_id = b.id AND a.units > 0) s ON s.units > 0
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.plant_id = ${plantId}::uuid AND b.unit = 'pack' AND b.closed_on IS NULL
     ORDER BY b.started_on, b.code`;
}

export interface StartContainer {
  id: string;
  name: string;
  kind: ContainerKind;
  cells: number | null;
  volumeMl: number | null;
}

export async function readContainers(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<StartContainer[]> {
  return tx.$queryRaw<StartContainer[]>`
    SELECT id::text, name, kind, cells, volume_ml AS "volumeMl" FROM container WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[]) AND retired_at IS NULL`;
}

export async function readSourceIds({ tx, nurseryId }: ReadContext, plantId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<
    { id: string }[]
  >`SELECT id::text FROM source WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid AND retired_at IS NULL ORDER BY code`;
  return rows.map(({ id }) => id);
}

/** What of a plant decides which pot-life rules reach it. */
export interface PlantReach {
  scientificName: string;
  genus: string;
  rootHabit: RootHabit;
  dormantMonths: number[];
}

export async function readPlantReach({ tx, nurseryId }: ReadContext, plantId: string): Promise<PlantReach | undefined> {
  const [row] = await tx.$queryRaw<PlantReach[]>`
    SELECT scientific_name AS "scientificName", genus, root_habit AS "rootHabit", dormant_months AS "dormantMonths" FROM plant WHERE nursery_id = ${nurseryId}::uuid AND id = ${plantId}::uuid`;
  return row;
}
