import { PLANT_BY_STATES, seasonEndAhead } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';
import { plantingWindow } from '../../stock/windows-reads.ts';
import { itemOf, type ScopeSupply } from './scope.ts';

const supplyRow = z.strictObject({
  id: z.string(),
  kind: z.enum(['lot', 'batch']),
  plantId: z.string(),
  scientificName: z.string(),
  units: z.number(),
  code: z.string(),
  nativeRegions: z.array(z.string()),
  containerCode: z.string(),
  held: z.boolean(),
  origin: z.string(),
  containerId: z.string(),
  seedZone: z.nullable(z.string()),
  plantByOn: z.nullable(z.string()),
  readyOn: z.nullable(z.string()),
  rootChecked: z.boolean(),
  limitOn: z.nullable(z.string()),
  clockOn: z.nullable(z.string()),
  containerMl: z.nullable(z.number()),
  cells: z.nullable(z.number()),
  quarantinedUnits: z.number(),
  plantByState: z.enum(PLANT_BY_STATES),
  isCultivar: z.boolean(),
  sourceKind: z.string(),
  pesticideStatement: z.nullable(z.string()),
});

/** Open lots of these items, and batches that are to become them; those named by id as well. Whether they were treated is added only where it is asked for. */
export async function loadSupplies(
  context: ReadContext,
  items: readonly string[],
  ids: readonly string[],
  asksTreatments: boolean,
): Promise<ScopeSupply[]> {
  const { tx, nurseryId } = context;
  const pairs = JSON.stringify(items.map((item) => ({ plant: item.split('@')[0], container: item.split('@')[1] })));
  // What is to become of a batch in packs is open: it is no item yet, and nobody's.
  // An array, not a join: the view is a union, which takes no join condition and would work out all that stands.
  const rows = await tx.rows(supplyRow)`
    WITH item AS MATERIALIZED (SELECT i.plant, i.container FROM jsonb_to_recordset(${pairs}::jsonb) AS i (plant uuid, container uuid)),
    wanted AS MATERIALIZED (
      SELECT l.id FROM item i JOIN lot_named l ON l.nursery_id = ${nurseryId}::uuid AND l.plant_id = i.plant AND l.container_id = i.container AND l.closed_on IS NULL
      UNION SELECT b.id FROM item i JOIN batch_named b ON b.nursery_id = ${nurseryId}::uuid AND b.plant_id = i.plant AND b.target_container_id = i.container AND b.cautious_units > 0
      UNION SELECT unnest(${[...ids]}::uuid[]))
    SELECT v.id::text, v.kind, v.code, v.plant_id::text AS "plantId", v.scientific_name AS "scientificName", v.container_id::text AS "containerId",
           v.container_code AS "containerCode", v.container_ml AS "containerMl", v.cells, v.units, v.quarantined_units AS "quarantinedUnits", v.held,
           v.ready_on::text AS "readyOn", v.root_checked AS "rootChecked", v.plant_by_on::text AS "plantByOn", v.plant_by_state AS "plantByState", v.limit_on::text AS "limitOn",
           v.clock_on::text AS "clockOn", v.seed_zone AS "seedZone", v.origin, v.is_cultivar AS "isCultivar", v.native_regions AS "nativeRegions", v.source_kind AS "sourceKind",
           v.pesticide_statement AS "pesticideStatement"
      FROM judged_supply v
     WHERE v.nursery_id = ${nurseryId}::uuid AND v.id = ANY (ARRAY(SELECT id FROM wanted)) AND (v.kind = 'lot' OR v.is_open) AND v.container_id IS NOT NULL`;
  const treated = asksTreatments
    ? await loadTreated(
        context,
        rows.map(({ id }) => id),
      )
    : new Set<string>();
  return rows.map((row) => ({ ...row, item: itemOf(row.plantId, row.containerId), treated: treated.has(row.id) }));
}

const treatedRow = z.strictObject({ id: z.string() });

/** Which of these lots and batches were treated, here or while they were still part of what they came from. */
async function loadTreated({ tx, nurseryId }: ReadContext, ids: readonly string[]): Promise<Set<string>> {
  const rows = await tx.rows(treatedRow)`
    SELECT DISTINCT subject_id::text AS id FROM treatments_of(${nurseryId}::uuid, ${[...ids]}::uuid[])`;
  return new Set(rows.map(({ id }) => id));
}

export const season = z.strictObject({
  horizonOn: z.string(),
  windows: z.array(plantingWindow),
});
export type Season = z.infer<typeof season>;

/** The stored end of the season, or where that has passed and the day is not rolled yet the next one, and the planting windows if one of these regions has its own. */
export async function loadSeason({ tx, nurseryId, today }: ReadContext, regions: readonly string[]): Promise<Season> {
  const row = await tx.row(season)`
    SELECT n.season_end_on::text AS "horizonOn",
           coalesce((SELECT jsonb_agg(jsonb_build_object('id', w.id, 'opensMd', w.opens_md, 'closesMd', w.closes_md, 'maxContainerMl', w.max_container_ml, 'region', w.region))
                       FROM window_named w
                      WHERE w.nursery_id = n.id AND w.retired_at IS NULL
                        AND EXISTS (SELECT 1 FROM window_named x WHERE x.nursery_id = n.id AND x.retired_at IS NULL AND x.region = ANY (${[...regions]}::text[]))), '[]') AS windows
      FROM nursery_settings n WHERE n.id = ${nurseryId}::uuid`;
  if (!row) throw new Error('the nursery of this transaction is gone');
  return { ...row, horizonOn: seasonEndAhead(row.horizonOn, today) };
}
