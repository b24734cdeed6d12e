import type {
  BatchUnit,
  ContainerKind,
  PlanContainer,
  PlanPlant,
  RootHabit,
  SourceKind,
  StandingUnits,
} from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';

export interface PlanSettings {
  confidence: number;
  priorWeight: number;
  evidenceLimit: number;
  currency: string;
}

export async function loadPlanSettings({ tx, nurseryId }: ReadContext): Promise<PlanSettings> {
  const [row] = await tx.$queryRaw<PlanSettings[]>`
    SELECT plan_confidence::float8 AS confidence, prior_weight AS "priorWeight", evidence_limit AS "evidenceLimit", currency FROM nursery WHERE id = ${nurseryId}::uuid`;
  if (!row) throw new Error('the nursery of this transaction is gone');
  return row;
}

export interface ExpectedRow {
  id: string;
  plantId: string;
  containerId: string;
  wantedOn: string;
  units: number;
  unitValueMinor: number | null;
  note: string;
}

/** What is expected from today on; what its day has passed for is no demand any more. */
export async function loadExpected({ tx, nurseryId, today }: ReadContext): Promise<ExpectedRow[]> {
  return tx.$queryRaw<ExpectedRow[]>`
    SELECT id::text, plant_id::text AS "plantId", container_id::text AS "containerId", wanted_on::text AS "wantedOn", units, unit_value_minor AS "unitValueMinor", note
      FROM expected_demand WHERE nursery_id = ${nurseryId}::uuid AND withdrawn_at IS NULL AND wanted_on >= ${today}::date ORDER BY wanted_on, id`;
}

export interface PlantRow extends PlanPlant {
  code: string;
  scientificName: string;
  vernacularName: string;
  rootHabit: RootHabit;
}

export async function loadPlants({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<PlantRow[]> {
  return tx.$queryRaw<PlantRow[]>`
    SELECT id::text, code, scientific_name AS "scientificName", vernacular_name AS "vernacularName", genus, root_habit AS "rootHabit", dormant_months AS "dormantMonths",
           cultivar_epithet IS NOT NULL AS "isCultivar"
      FROM plant WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[])`;
}

export interface ContainerRow extends PlanContainer {
  code: string;
  name: string;
}

/** All of them, retired ones too: plants still stand in those. */
export async function loadContainers({ tx, nurseryId }: ReadContext): Promise<ContainerRow[]> {
  return tx.$queryRaw<ContainerRow[]>`
    SELECT id::text, code, name, kind, volume_ml AS "volumeMl", width_mm * length_mm AS "footprintMm2", cells FROM container WHERE nursery_id = ${nurseryId}::uuid`;
}

export interface SourceRow {
  id: string;
  code: string;
  plantId: string;
  kind: SourceKind;
  provenance: string;
  seedZone: string | null;
  origin: string;
}

export async function loadSources({ tx, nurseryId }: ReadContext, plantIds: readonly string[]): Promise<SourceRow[]> {
  return tx.$queryRaw<SourceRow[]>`
    SELECT id::text, code, plant_id::text AS "plantId", kind, coalesce(nullif(provenance, ''), vendor, '') AS provenance, seed_zone AS "seedZone", origin
      FROM source WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ANY (${[...plantIds]}::uuid[]) AND retired_at IS NULL`;
}

export interface StandingRow {
  id: string;
  kind: 'lot' | 'batch';
  units: number;
  unit: BatchUnit | null;
  containerId: string | null;
  containerKind: ContainerKind | null;
  cells: number | null;
  targetContainerId: string | null;
  cautiousUnits: number;
  plantByOn: string | null;
  /** When a batch is to be potted, where its protocol or its ready day tells. */
  pottingOn: string | null;
}

export interface BenchRows {
  capacityM2: number | null;
  standing: StandingRow[];
}

/** Stages from which on plants stand in their own pots. */
const POTTED = ['pricking-out', 'growing-on', 'hardening', 'root-check', 'ready'];
/** Days from potting to ready of a batch without a protocol (assumed). */
const GROWS_ON_DAYS = 60;

/**
 * The bench area, and what stands on it. Where a place and places within it were both measured, the outer one's area counts, which holds the others.
 * What stands where nobody measured takes nothing of it.
 */
export async function loadBenches({ tx, nurseryId }: ReadContext): Promise<BenchRows> {
  const [benches] = await tx.$queryRaw<{ capacityM2: number | null; placeIds: string[] }[]>`
    WITH RECURSIVE tree AS (
      SELECT p.id, p.bench_area_m2 IS NOT NULL AS measured, p.bench_area_m2::float8 AS area FROM place p WHERE p.nursery_id = ${nurseryId}::uuid AND p.parent_id IS NULL AND p.retired_at IS NULL
      UNION ALL
      SELECT c.id, t.measured OR c.bench_area_m2 IS NOT NULL, CASE WHEN NOT t.measured THEN c.bench_area_m2::float8 END
        FROM tree t JOIN place c ON c.nursery_id = ${nurseryId}::uuid AND c.parent_id = t.id AND c.retired_at IS NULL)
    SELECT sum(area) AS "capacityM2", coalesce(array_agg(id::text) FILTER (WHERE measured), '{}') AS "placeIds" FROM tree`;
  const placeIds = benches?.placeIds ?? [];
  if (placeIds.length === 0) return { capacityM2: null, standing: [] };
  const standing = await tx.$queryRaw<StandingRow[]>`
    WITH there AS (
      SELECT lot_id, batch_id, sum(units)::int AS units FROM account
       WHERE nursery_id = ${nurseryId}::uuid AND units > 0 AND place_id = ANY (${placeIds}::uuid[]) GROUP BY lot_id, batch_id)
    SELECT l.id::text, 'lot' AS kind, t.units, NULL AS unit, l.container_id::text AS "containerId", c.kind AS "containerKind", c.cells, NULL AS "targetContainerId", 0 AS "cautiousUnits",
           l.plant_by_on::text AS "plantByOn", NULL AS "pottingOn"
      FROM there t JOIN lot l ON l.nursery_id = ${nurseryId}::uuid AND l.id = t.lot_id JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
    UNION ALL
    SELECT b.id::text, 'batch', t.units, b.unit, b.container_id::text, c.kind, c.cells, b.target_container_id::text, b.cautious_units, b.plant_by_on::text,
           coalesce(b.stage_begun_on + w.days, b.ready_on - ${GROWS_ON_DAYS}::int)::text
      FROM there t JOIN batch b ON b.nursery_id = ${nurseryId}::uuid AND b.id = t.batch_id
      LEFT JOIN container c ON c.nursery_id = b.nursery_id AND c.id = b.container_id
      LEFT JOIN LATERAL (
        SELECT coalesce(sum(g.usual_days) FILTER (WHERE NOT g.kind = ANY (${POTTED})), 0)::int AS days
          FROM protocol_stage g WHERE g.nursery_id = b.nursery_id AND g.version_id = b.protocol_version_id AND g.position >= b.stage_position) w ON b.stage_position IS NOT NULL`;
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
