import { plants } from '@rootclock/contracts';
import { HANDLING_RULES, POT_LIFE_BASES, ROOT_HABITS, STANDINGS, TAXON_RANKS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../refusal.ts';
import { query, type ReadContext } from '../../trpc/operation.ts';

const head = z.strictObject({
  id: z.string(),
  edition: z.number(),
  scientificName: z.string(),
  scientificNameAuthorship: z.string(),
  taxonRank: z.enum(TAXON_RANKS),
  family: z.string(),
  handling: z.array(z.enum(HANDLING_RULES)),
  isRetired: z.boolean(),
  units: z.number(),
  code: z.string(),
  vernacularName: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  larvalHost: z.boolean(),
  dormantMonths: z.array(z.number()),
  lastEmergenceMd: z.nullable(z.string()),
  yearOfFirstBloom: z.nullable(z.number()),
  nativeRegions: z.array(z.string()),
  openBatches: z.number(),
});
type Head = z.infer<typeof head>;

async function readHead({ tx, nurseryId }: ReadContext, plantId: string): Promise<Head> {
  const row = await tx.row(head)`
    SELECT p.id::text, p.edition, p.code, p.scientific_name AS "scientificName", p.scientific_name_authorship AS "scientificNameAuthorship", p.taxon_rank AS "taxonRank", p.family,
           p.vernacular_name AS "vernacularName", p.root_habit AS "rootHabit", p.larval_host AS "larvalHost", p.handling, p.retired_at IS NOT NULL AS "isRetired",
           p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd", p.year_of_first_bloom AS "yearOfFirstBloom", p.native_regions AS "nativeRegions",
           coalesce((SELECT sum(a.units)::int FROM lot_named l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place'
                      WHERE l.nursery_id = p.nursery_id AND l.plant_id = p.id AND l.closed_on IS NULL), 0) AS units,
           (SELECT count(*)::int FROM batch_named b WHERE b.nursery_id = p.nursery_id AND b.plant_id = p.id AND b.closed_on IS NULL) AS "openBatches"
      FROM plant p WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = ${plantId}::uuid`;
  return found(row, 'plant', 'plantId');
}

const plantName = z.strictObject({
  id: z.string(),
  kind: z.enum(['synonym', 'common']),
  name: z.string(),
  standing: z.enum(STANDINGS),
  alsoMeans: z.array(z.strictObject({ plantId: z.string(), scientificName: z.string() })),
});

const readNames = ({ tx, nurseryId }: ReadContext, plantId: string) => tx.rows(plantName)`
  SELECT n.id::text, n.kind, n.name, n.standing,
         coalesce((SELECT jsonb_agg(DISTINCT jsonb_build_object('plantId', o.id, 'scientificName', o.scientific_name))
                     FROM plant_name m JOIN plant o ON o.nursery_id = m.nursery_id AND o.id = m.plant_id
                    WHERE m.nursery_id = n.nursery_id AND m.name_key = n.name_key AND m.plant_id <> n.plant_id), '[]') AS "alsoMeans"
    FROM plant_name n WHERE n.nursery_id = ${nurseryId}::uuid AND n.plant_id = ${plantId}::uuid AND n.kind <> 'scientific'
   ORDER BY n.kind, n.name`;

const plantFact = z.strictObject({
  field: z.string(),
  edition: z.number(),
  value: z.nullable(z.union([z.boolean(), z.string(), z.number(), z.array(z.string()), z.array(z.number())])),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
  note: z.nullable(z.string()),
});

const readFacts = ({ tx, nurseryId }: ReadContext, plantId: string) => tx.rows(plantFact)`
  SELECT field, edition, value, standing, source, note FROM plant_fact WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid ORDER BY field`;

const reachingRule = z.strictObject({
  id: z.string(),
  basis: z.enum(POT_LIFE_BASES),
  span: z.nullable(z.string()),
  reach: z.enum(['plant-container', 'plant', 'genus', 'root-habit-container', 'root-habit']),
  containerName: z.nullable(z.string()),
  winterCarry: z.nullable(z.strictObject({ maxDays: z.number(), graceDays: z.number() })),
  standing: z.enum(STANDINGS),
  note: z.string(),
});

/** Rules by their reach, the most particular first, as the clocks take them. */
const readRules = ({ tx, nurseryId }: ReadContext, plantId: string) => tx.rows(reachingRule)`
  SELECT id, basis, span, reach, "containerName", "winterCarry", standing, note FROM (
    SELECT r.id::text, r.basis, r.span,
           CASE WHEN r.plant_id IS NOT NULL AND r.container_id IS NOT NULL THEN 'plant-container' WHEN r.plant_id IS NOT NULL THEN 'plant' WHEN r.genus IS NOT NULL THEN 'genus'
                WHEN r.container_id IS NOT NULL THEN 'root-habit-container' ELSE 'root-habit' END AS reach,
           c.name AS "containerName", c.volume_ml,
           CASE WHEN r.carry_max_days IS NULL THEN NULL ELSE jsonb_build_object('maxDays', r.carry_max_days, 'graceDays', r.carry_grace_days) END AS "winterCarry", r.standing, r.note
      FROM rule_named r
      JOIN plant p ON p.nursery_id = r.nursery_id AND p.id = ${plantId}::uuid
      LEFT JOIN container c ON c.nursery_id = r.nursery_id AND c.id = r.container_id
     WHERE r.nursery_id = ${nurseryId}::uuid AND r.retired_at IS NULL AND r.lot_id IS NULL AND c.retired_at IS NULL
       AND (r.plant_id = p.id OR lower(r.genus) = lower(p.genus) OR r.root_habit = p.root_habit)) rules
   ORDER BY array_position(ARRAY['plant-container', 'plant', 'genus', 'root-habit-container', 'root-habit'], reach), volume_ml NULLS LAST, basis, id`;

const standingRow = z.strictObject({
  containerId: z.string(),
  containerCode: z.string(),
  containerName: z.string(),
  lots: z.number(),
  units: z.number(),
  reserved: z.number(),
  plantByOn: z.nullable(z.string()),
});

const readStanding = ({ tx, nurseryId }: ReadContext, plantId: string) => tx.rows(standingRow)`
  SELECT c.id::text AS "containerId", c.code AS "containerCode", c.name AS "containerName", count(*)::int AS lots, sum(u.units)::int AS units,
         sum(u.reserved)::int AS reserved, min(l.plant_by_on)::text AS "plantByOn"
    FROM lot_named l JOIN container c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
    JOIN LATERAL (SELECT coalesce((SELECT sum(a.units) FROM units_standing a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place'), 0) AS units,
                         (SELECT f.reserved_units FROM free_units f WHERE f.nursery_id = l.nursery_id AND f.lot_id = l.id) AS reserved) u ON u.units > 0
   WHERE l.nursery_id = ${nurseryId}::uuid AND l.plant_id = ${plantId}::uuid AND l.closed_on IS NULL
   GROUP BY c.id, c.code, c.name, c.volume_ml ORDER BY c.volume_ml NULLS LAST`;

/** All that is known of one plant, each value with its word, and what stands of it. */
export const readPlant = query({
  name: 'readPlant',
  input: plants.readPlant,
  roles: EVERYONE,
  read: async (context, { plantId }): Promise<plants.PlantPage> => ({
    ...(await readHead(context, plantId)),
    names: await readNames(context, plantId),
    facts: await readFacts(context, plantId),
    rules: (await readRules(context, plantId)).map(
      ({ id, basis, span, reach, containerName, winterCarry, standing, note }) => ({
        id,
        basis,
        span,
        reach,
        containerName,
        winterCarry,
        standing,
        note,
      }),
    ),
    standing: await readStanding(context, plantId),
  }),
});
