import type { plants } from '@rootclock/contracts';
import { HANDLING_RULES, ROOT_HABITS, type ParsedName, type Standing } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../db/editions.ts';
import { setInNursery } from '../../db/nursery-row.ts';
import { sql } from '../../db/sql.ts';
import { found } from '../../refusal.ts';
import type { CommandContext, ReadContext } from '../../trpc/operation.ts';

/** Says that clocks must be reckoned anew: a plant, container, rule or window changed. */
export async function clocksChanged(context: CommandContext): Promise<void> {
  context.touched.allClocks = true;
  await setInNursery(context, sql`rules_version = rules_version + 1`);
}

/** A plant's values that commands may change. */
export const plantTraits = z.strictObject({
  vernacularName: z.string(),
  family: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
  larvalHost: z.boolean(),
  dormantMonths: z.array(z.number()),
  lastEmergenceMd: z.nullable(z.string()),
  yearOfFirstBloom: z.nullable(z.number()),
  nativeRegions: z.array(z.string()),
  handling: z.array(z.enum(HANDLING_RULES)),
});
export type PlantTraits = z.infer<typeof plantTraits>;

export const storedPlant = z.strictObject({
  ...plantTraits.shape,
  id: z.string(),
  code: z.string(),
  scientificName: z.string(),
  scientificNameAuthorship: z.string(),
  isRetired: z.boolean(),
});
export type StoredPlant = z.infer<typeof storedPlant>;

/** A plant by id; one that is not this nursery's answers as not found. */
export async function loadPlant({ tx, nurseryId }: ReadContext, id: string, field = 'plantId'): Promise<StoredPlant> {
  const row = await tx.row(storedPlant)`
    SELECT id::text, code, scientific_name AS "scientificName", scientific_name_authorship AS "scientificNameAuthorship", vernacular_name AS "vernacularName", family,
           root_habit AS "rootHabit", larval_host AS "larvalHost", dormant_months AS "dormantMonths", last_emergence_md AS "lastEmergenceMd",
           year_of_first_bloom AS "yearOfFirstBloom", native_regions AS "nativeRegions", handling, retired_at IS NOT NULL AS "isRetired"
      FROM plant WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(row, 'plant', field);
}

const plantCode = z.strictObject({ code: z.string() });

export async function loadCodes({ tx, nurseryId }: ReadContext): Promise<Set<string>> {
  const rows = await tx.rows(plantCode)`SELECT code FROM plant WHERE nursery_id = ${nurseryId}::uuid`;
  return new Set(rows.map(({ code }) => code));
}

const plantIdRow = z.strictObject({ id: z.string() });

export async function loadPlantIds({ tx, nurseryId }: ReadContext): Promise<Set<string>> {
  const rows = await tx.rows(plantIdRow)`SELECT id::text FROM plant WHERE nursery_id = ${nurseryId}::uuid`;
  return new Set(rows.map(({ id }) => id));
}

export type NewPlant = PlantTraits & ParsedName & { id: string; code: string };

const addedPlant = z.strictObject({ id: z.string() });

/** Adds plants; one whose id, code or name is there already is left out. Answers the ids of those added. */
export async function insertPlants({ tx, nurseryId }: CommandContext, rows: readonly NewPlant[]): Promise<Set<string>> {
  const added = await tx.rows(addedPlant)`
    INSERT INTO plant (nursery_id, id, code, scientific_name, scientific_name_authorship, taxon_rank, family, genus, specific_epithet, infraspecific_epithet, cultivar_epithet,
                       vernacular_name, root_habit, larval_host, dormant_months, last_emergence_md, year_of_first_bloom, native_regions, handling)
    SELECT ${nurseryId}::uuid, p.id, p.code, p."scientificName", p."scientificNameAuthorship", p."taxonRank", p.family, p.genus, p."specificEpithet", p."infraspecificEpithet",
           p."cultivarEpithet", p."vernacularName", p."rootHabit", p."larvalHost", p."dormantMonths", p."lastEmergenceMd", p."yearOfFirstBloom", p."nativeRegions", p.handling
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS p (id uuid, code text, "scientificName" text, "scientificNameAuthorship" text, "taxonRank" text, family text, genus text,
           "specificEpithet" text, "infraspecificEpithet" text, "cultivarEpithet" text, "vernacularName" text, "rootHabit" text, "larvalHost" boolean, "dormantMonths" int[],
           "lastEmergenceMd" text, "yearOfFirstBloom" int, "nativeRegions" text[], handling text[])
    ON CONFLICT DO NOTHING RETURNING id::text`;
  return new Set(added.map(({ id }) => id));
}

export async function updatePlant(
  { tx, nurseryId }: CommandContext,
  id: string,
  name: ParsedName,
  traits: PlantTraits,
): Promise<void> {
  await tx.run`
    UPDATE plant SET scientific_name = ${name.scientificName}, scientific_name_authorship = ${name.scientificNameAuthorship}, taxon_rank = ${name.taxonRank}, genus = ${name.genus},
           specific_epithet = ${name.specificEpithet}, infraspecific_epithet = ${name.infraspecificEpithet}, cultivar_epithet = ${name.cultivarEpithet},
           vernacular_name = ${traits.vernacularName}, family = ${traits.family}, root_habit = ${traits.rootHabit}, larval_host = ${traits.larvalHost},
           dormant_months = ${traits.dormantMonths}::int[], last_emergence_md = ${traits.lastEmergenceMd}, year_of_first_bloom = ${traits.yearOfFirstBloom}::int,
           native_regions = ${traits.nativeRegions}::text[], handling = ${traits.handling}::text[]
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function markRetired({ tx, nurseryId }: CommandContext, id: string, at: Date | null): Promise<void> {
  await tx.run`UPDATE plant SET retired_at = ${at}::timestamptz WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
}

export interface NewFact {
  plantId: string;
  field: string;
  value: plants.PlantFactValue;
  standing: Standing;
  source: string | null;
  note: string | null;
}

/** Writes facts. With `keep` what is known already stays, else it is replaced. */
export async function putFacts(
  { tx, nurseryId }: CommandContext,
  facts: readonly NewFact[],
  { keep = false } = {},
): Promise<void> {
  if (facts.length === 0) return;
  await tx.run`
    INSERT INTO plant_fact (nursery_id, plant_id, field, value, standing, source, note)
    SELECT ${nurseryId}::uuid, f."plantId", f.field, coalesce(f.value, 'null'::jsonb), f.standing, f.source, f.note
      FROM jsonb_to_recordset(${JSON.stringify(facts)}::jsonb) AS f ("plantId" uuid, field text, value jsonb, standing text, source text, note text)
    ON CONFLICT (nursery_id, plant_id, field) DO UPDATE SET value = EXCLUDED.value, standing = EXCLUDED.standing, source = EXCLUDED.source, note = EXCLUDED.note
      WHERE NOT ${keep}`;
}

const standingTally = z.strictObject({ units: z.number(), batches: z.number() });

/** What stands of a plant anywhere, pulled plants included, and its open batches. */
export async function countStanding(
  { tx, nurseryId }: ReadContext,
  plantId: string,
): Promise<{ units: number; batches: number }> {
  const row = await tx.row(standingTally)`
    SELECT coalesce((SELECT sum(a.units)::int FROM lot_named l JOIN units_standing a ON a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind IN ('place', 'staged')
                      WHERE l.nursery_id = ${nurseryId}::uuid AND l.plant_id = ${plantId}::uuid AND l.closed_on IS NULL), 0) AS units,
           (SELECT count(*)::int FROM batch_named b WHERE b.nursery_id = ${nurseryId}::uuid AND b.plant_id = ${plantId}::uuid AND b.closed_on IS NULL) AS batches`;
  return row ?? { units: 0, batches: 0 };
}

export const plantEdits = editedRow<{ plantId: string }>({
  table: 'plant',
  row: ({ plantId }) => sql`r.id = ${plantId}::uuid`,
  partial: true,
  fields: {
    ...columns(
      'vernacularName',
      'family',
      'rootHabit',
      'larvalHost',
      'dormantMonths',
      'lastEmergenceMd',
      'yearOfFirstBloom',
      'nativeRegions',
      'handling',
    ),
    scientificName: "trim(r.scientific_name || ' ' || r.scientific_name_authorship)",
  },
});

/** A fact that nobody has said yet is no row, and there is nothing to write over. */
export const factEdits = editedRow<{ plantId: string; field: string }>({
  table: 'plant_fact',
  row: ({ plantId, field }) => sql`r.plant_id = ${plantId}::uuid AND r.field = ${field}`,
  fields: columns('value', 'source', 'note'),
});
