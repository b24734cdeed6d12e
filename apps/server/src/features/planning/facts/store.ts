import { BATCH_UNITS, CONTAINER_KINDS, ROOT_HABITS, SOURCE_KINDS, type StandingUnits } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export const planSettings = z.strictObject({
  confidence: z.number(),
  priorWeight: z.number(),
  evidenceLimit: z.number(),
  currency: z.string(),
});
export type PlanSettings = z.infer<typeof planSettings>;

export async function loadPlanSettings({ tx, nurseryId }: ReadContext): Promise<PlanSettings> {
  const row = await tx.row(planSettings)`
    SELECT plan_confidence::float8 AS confidence, prior_weight AS "priorWeight", evidence_limit AS "evidenceLimit", currency FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  if (!row) throw new Error('the nursery of this transaction is gone');
  return row;
}

export const expectedRow = z.strictObject({
  id: z.string(),
  plantId: z.string(),
  containerId: z.string(),
  wantedOn: z.string(),
  units: z.number(),
  unitValueMinor: z.nullable(z.number()),
  note: z.string(),
});
export type ExpectedRow = z.infer<typeof expectedRow>;

/** What is expected from today on; what its day has passed for is no demand any more. */
export async function loadExpected({ tx, nurseryId, today }: ReadContext): Promise<ExpectedRow[]> {
  return tx.rows(expectedRow)`
    SELECT id::text, plant_id::text AS "plantId", container_id::text AS "containerId", wanted_on::text AS "wantedOn", units, unit_value_minor AS "unitValueMinor", note
      FROM expected_demand WHERE nursery_id = ${nurseryId}::uuid AND withdrawn_at IS NULL AND wanted_on >= ${today}::date ORDER BY wanted_on, id`;
}

export const plantRow = z.strictObject({
  id: z.string(),
  genus: z.string(),
  dormantMonths: z.array(z.number()),
  isCultivar: z.boolean(),
  code: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
});
export type PlantRow = z.infer<typeof plantRow>;

export async function loadPlants({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<PlantRow[]> {
  return tx.rows(plantRow)`
    SELECT id::text, code, scientific_name AS "scientificName", vernacular_name AS "vernacularName", genus, root_habit AS "rootHabit", dormant_months AS "dormantMonths",
           cultivar_epithet IS NOT NULL AS "isCultivar"
      FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[])`;
}

export const containerRow = z.strictObject({
  id: z.string(),
  kind: z.enum(CONTAINER_KINDS),
  volumeMl: z.nullable(z.number()),
  footprintMm2: z.nullable(z.number()),
  cells: z.nullable(z.number()),
  code: z.string(),
  name: z.string(),
});
export type ContainerRow = z.infer<typeof containerRow>;

/** All of them, retired ones too: plants still stand in those. */
export async function loadContainers({ tx, nurseryId }: ReadContext): Promise<ContainerRow[]> {
  return tx.rows(containerRow)`
    SELECT id::text, code, name, kind, volume_ml AS "volumeMl", width_mm * length_mm AS "footprintMm2", cells FROM container_told WHERE nursery_id = ${nurseryId}::uuid`;
}

export const sourceRow = z.strictObject({
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
  kind: z.enum(SOURCE_KINDS),
  provenance: z.string(),
  seedZone: z.nullable(z.string()),
  origin: z.string(),
});
export type SourceRow = z.infer<typeof sourceRow>;

export async function loadSources({ tx, nurseryId }: ReadContext, plantIds: readonly string[]): Promise<SourceRow[]> {
  return tx.rows(sourceRow)`
    SELECT id::text, code, plant_id::text AS "plantId", kind, coalesce(nullif(provenance, ''), vendor, '') AS provenance, seed_zone AS "seedZone", origin
      FROM source_named WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ANY (${[...plantIds]}::uuid[]) AND retired_at IS NULL`;
}

export const standingRow = z.strictObject({
  id: z.string(),
  kind: z.enum(['lot', 'batch']),
  units: z.number(),
  unit: z.nullable(z.enum(BATCH_UNITS)),
  containerId: z.nullable(z.string()),
  containerKind: z.nullable(z.enum(CONTAINER_KINDS)),
  cells: z.nullable(z.number()),
  targetContainerId: z.nullable(z.string()),
  cautiousUnits: z.number(),
  plantByOn: z.nullable(z.string()),
  /** When a batch is to be potted, where its protocol or its ready day tells. */
  pottingOn: z.nullable(z.string()),
});
export type StandingRow = z.infer<typeof standingRow>;

export interface BenchRows {
  capacityM2: number | null;
  standing: StandingRow[];
}

/** Stages from which on plants stand in their own pots. */
const POTTED = ['pricking-out', 'growing-on', 'hardening', 'root-check', 'ready'];
/** Days from potting to ready of a batch without a protocol (assumed). */
const GROWS_ON_DAYS = 60;

const benchArea = z.strictObject({ capacityM2: z.nullable(z.number()), placeIds: z.array(z.string()) });

/**
 * The bench area, and what stands on it. Where a place and places within it were both measured, the outer one's area counts, which holds the others.
 * What stands where nobody measured takes nothing of it.
 */
export async function loadBenches({ tx, nurseryId }: ReadContext): Promise<BenchRows> {
  const benches = await tx.row(benchArea)`
    WITH RECURSIVE tree AS (
      SELECT p.id, p.bench_area_m2 IS NOT NULL AS measured, p.bench_area_m2::float8 AS area FROM place_told p WHERE p.nursery_id = ${nurseryId}::uuid AND p.parent_id IS NULL AND p.retired_at IS NULL
      UNION ALL
      SELECT c.id, t.measured OR c.bench_area_m2 IS NOT NULL, CASE WHEN NOT t.measured THEN c.bench_area_m2::float8 END
        FROM tree t JOIN place_told c ON c.nursery_id = ${nurseryId}::uuid AND c.parent_id = t.id AND c.retired_at IS NULL)
    SELECT sum(area) AS "capacityM2", coalesce(array_agg(id::text) FILTER (WHERE measured), '{}') AS "placeIds" FROM tree`;
  const placeIds = benches?.placeIds ?? [];
  if (placeIds.length === 0) return { capacityM2: null, standing: [] };
  const standing = await tx.rows(standingRow)`
    WITH there AS (
      SELECT lot_id, batch_id, sum(units)::int AS units FROM units_standing
       WHERE nursery_id = ${nurseryId}::uuid AND units > 0 AND place_id = ANY (${placeIds}::uuid[]) GROUP BY lot_id, batch_id)
    SELECT l.id::text, 'lot' AS kind, t.units, NULL AS unit, l.container_id::text AS "containerId", c.kind AS "containerKind", c.cells, NULL AS "targetContainerId", 0 AS "cautiousUnits",
           l.plant_by_on::text AS "plantByOn", NULL AS "pottingOn"
      FROM there t JOIN lot_named l ON l.nursery_id = ${nurseryId}::uuid AND l.id = t.lot_id JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
    UNION ALL
    SELECT b.id::text, 'batch', t.units, b.unit, b.container_id::text, c.kind, c.cells, b.target_container_id::text, b.cautious_units, b.plant_by_on::text,
           coalesce(b.stage_begun_on + w.days, b.ready_on - ${GROWS_ON_DAYS}::int)::text
      FROM there t JOIN batch_told b ON b.nursery_id = ${nurseryId}::uuid AND b.id = t.batch_id
      LEFT JOIN container_named c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN LATERAL (
        SELECT coalesce(sum(g.usual_days) FILTER (WHERE NOT g.kind = ANY (${POTTED})), 0)::int AS days
          FROM stage_told g WHERE g.nursery_id = b.nursery_id AND g.version_id = b.protocol_version_id AND g.position >= b.stage_position) w ON b.stage_position IS NOT NULL`;
  return { capacityM2: benches?.capacityM2 ?? null, standing };
}

/** Trays that a batch stands in, or pots of a lot. Packs and loose pieces stand in none. */
function containersOf({ units, unit, containerKind, cells }: StandingRow): number {
  return containerKind === 'tray' && cells !== null && unit !== 'tray' ? Math.ceil(units / cells) : units;
}

export function standingOf(row: StandingRow, today: string): StandingUnits {
  const { id, kind, containerId, plantByOn } = row;
  if (kind === 'lot')
    return {
      id,
      now: null,
      potted: containerId === null ? null : { containerId, plants: row.units, fromOn: today },
      plantByOn,
    };
  const now = containerId === null || row.unit === 'pack' ? null : { containerId, containers: containersOf(row) };
  const fromOn = row.pottingOn === null || row.pottingOn < today ? today : row.pottingOn;
  const potted =
    row.targetContainerId === null ||
    row.targetContainerId === containerId ||
    row.cautiousUnits === 0 ||
    row.pottingOn === null
      ? null
      : { containerId: row.targetContainerId, plants: row.cautiousUnits, fromOn };
  return { id, now, potted, plantByOn };
}
