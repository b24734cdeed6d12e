import { DAY_PRECISIONS, SEED_STORAGES, SOURCE_KINDS, SOURCE_ORIGINS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow } from '../../db/editions.ts';
import { sql } from '../../db/sql.ts';
import { found } from '../../refusal.ts';
import type { CommandContext, ReadContext } from '../../trpc/operation.ts';

/** What is said of a source's seed; of what holds none nothing is. */
export const seedFields = z.strictObject({
  rawGrams: z.nullable(z.number()),
  cleanedGrams: z.nullable(z.number()),
  purity: z.nullable(z.number()),
  seedsPerGram: z.nullable(z.number()),
  sowFresh: z.boolean(),
  neverDry: z.boolean(),
  storage: z.nullable(z.enum(SEED_STORAGES)),
  storedOn: z.nullable(z.string()),
});
export type SeedFields = z.infer<typeof seedFields>;

export const NOTHING_OF_SEED: SeedFields = {
  rawGrams: null,
  cleanedGrams: null,
  purity: null,
  seedsPerGram: null,
  sowFresh: false,
  neverDry: false,
  storage: null,
  storedOn: null,
};

export const sourceFields = z.strictObject({
  ...seedFields.shape,
  kind: z.enum(SOURCE_KINDS),
  provenance: z.string(),
  seedZone: z.nullable(z.string()),
  origin: z.enum(SOURCE_ORIGINS),
  gatheredOn: z.nullable(z.string()),
  gatheredPrecision: z.nullable(z.enum(DAY_PRECISIONS)),
  collector: z.nullable(z.string()),
  permit: z.nullable(z.string()),
  vendor: z.nullable(z.string()),
  vendorLot: z.nullable(z.string()),
  pesticideStatement: z.nullable(z.string()),
  motherLotId: z.nullable(z.string()),
  note: z.string(),
});
export type SourceFields = z.infer<typeof sourceFields>;

export const newSource = z.strictObject({
  ...sourceFields.shape,
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
});
export type NewSource = z.infer<typeof newSource>;

/** A source as commands need it. */
export const sourceFacts = z.strictObject({
  ...sourceFields.shape,
  id: z.string(),
  edition: z.number(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  retired: z.boolean(),
});
export type SourceFacts = z.infer<typeof sourceFacts>;

export const plantName = z.strictObject({
  id: z.string(),
  code: z.string(),
  scientificName: z.string(),
});
export type PlantName = z.infer<typeof plantName>;

const fieldColumns = sql`s.kind, s.provenance, s.seed_zone AS "seedZone", s.origin, s.gathered_on::text AS "gatheredOn", s.gathered_precision AS "gatheredPrecision",
  s.collector, s.permit, s.vendor, s.vendor_lot AS "vendorLot", s.pesticide_statement AS "pesticideStatement", s.mother_lot_id::text AS "motherLotId", s.note,
  s.raw_grams::float8 AS "rawGrams", s.cleaned_grams::float8 AS "cleanedGrams", s.purity::float8 AS purity, s.seeds_per_gram::float8 AS "seedsPerGram",
  s.sow_fresh AS "sowFresh", s.never_dry AS "neverDry", s.storage, s.stored_on::text AS "storedOn"`;

/** Plants by id; an id that is not this nursery's is left out, so that the caller can say which field it came from. */
export async function loadPlantNames(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<Map<string, PlantName>> {
  const rows = await tx.rows(plantName)`
    SELECT id::text, code, scientific_name AS "scientificName" FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[])`;
  return new Map(rows.map((row) => [row.id, row]));
}

/** Sources by id, as `loadPlantNames`. */
export async function loadSources(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
): Promise<Map<string, SourceFacts>> {
  const rows = await tx.rows(sourceFacts)`
    SELECT s.id::text, s.edition, s.code, s.plant_id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", ${fieldColumns},
           s.retired_at IS NOT NULL AS retired
      FROM source s JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.id = ANY (${[...ids]}::uuid[])`;
  return new Map(rows.map((row) => [row.id, row]));
}

export async function loadSource(context: ReadContext, id: string, field = 'sourceId'): Promise<SourceFacts> {
  return found((await loadSources(context, [id])).get(id), 'source', field);
}

/** Sources of these plants that are still in use: where words describe one of them, no second one is made. Words never mean a blend. */
export async function loadOpenSourcesOf(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[],
): Promise<NewSource[]> {
  return tx.rows(newSource)`
    SELECT s.id::text, s.code, s.plant_id::text AS "plantId", ${fieldColumns}
      FROM source s WHERE s.nursery_id = ${nurseryId}::uuid AND s.plant_id = ANY (${[...plantIds]}::uuid[]) AND s.retired_at IS NULL
         AND NOT EXISTS (SELECT 1 FROM source_part b WHERE b.nursery_id = s.nursery_id AND b.source_id = s.id) ORDER BY s.code`;
}

export async function insertSources(context: CommandContext, sources: readonly NewSource[]): Promise<void> {
  if (sources.length === 0) return;
  context.touched.features.add('sources');
  await context.tx.run`
    INSERT INTO source (nursery_id, id, code, plant_id, kind, provenance, seed_zone, origin, gathered_on, gathered_precision, collector, permit, vendor, vendor_lot,
                        pesticide_statement, mother_lot_id, note, raw_grams, cleaned_grams, purity, seeds_per_gram, sow_fresh, never_dry, storage, stored_on)
    SELECT ${context.nurseryId}::uuid, n.id, n.code, n."plantId", n.kind, n.provenance, n."seedZone", n.origin, n."gatheredOn", n."gatheredPrecision", n.collector, n.permit,
           n.vendor, n."vendorLot", n."pesticideStatement", n."motherLotId", n.note, n."rawGrams", n."cleanedGrams", n.purity, n."seedsPerGram", n."sowFresh", n."neverDry",
           n.storage, n."storedOn"
      FROM jsonb_to_recordset(${JSON.stringify(sources)}::jsonb) AS n (id uuid, code text, "plantId" uuid, kind text, provenance text, "seedZone" text, origin text,
           "gatheredOn" date, "gatheredPrecision" text, collector text, permit text, vendor text, "vendorLot" text, "pesticideStatement" text, "motherLotId" uuid, note text,
           "rawGrams" numeric, "cleanedGrams" numeric, purity numeric, "seedsPerGram" numeric, "sowFresh" boolean, "neverDry" boolean, storage text, "storedOn" date)`;
}

export async function updateSource(context: CommandContext, id: string, fields: SourceFields): Promise<void> {
  context.touched.features.add('sources');
  await context.tx.run`
    UPDATE source SET kind = ${fields.kind}, provenance = ${fields.provenance}, seed_zone = ${fields.seedZone}, origin = ${fields.origin},
           gathered_on = ${fields.gatheredOn}::date, gathered_precision = ${fields.gatheredPrecision}, collector = ${fields.collector}, permit = ${fields.permit},
           vendor = ${fields.vendor}, vendor_lot = ${fields.vendorLot}, pesticide_statement = ${fields.pesticideStatement},
           mother_lot_id = ${fields.motherLotId}::uuid, note = ${fields.note}, raw_grams = ${fields.rawGrams}::float8, cleaned_grams = ${fields.cleanedGrams}::float8,
           purity = ${fields.purity}::float8, seeds_per_gram = ${fields.seedsPerGram}::float8, sow_fresh = ${fields.sowFresh}, never_dry = ${fields.neverDry},
           storage = ${fields.storage}, stored_on = ${fields.storedOn}::date
     WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}

/** Says of sources which plant they are. */
export async function setSourcePlants(
  { tx, nurseryId, touched }: CommandContext,
  sources: readonly { id: string; plantId: string }[],
): Promise<void> {
  if (sources.length === 0) return;
  touched.features.add('sources');
  await tx.run`
    UPDATE source o SET plant_id = s."plantId"
      FROM jsonb_to_recordset(${JSON.stringify(sources)}::jsonb) AS s (id uuid, "plantId" uuid)
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = s.id`;
}

export async function setSourceRetired(context: CommandContext, id: string, retiredAt: Date | null): Promise<void> {
  context.touched.features.add('sources');
  await context.tx
    .run`UPDATE source SET retired_at = ${retiredAt} WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}

export const motherLot = z.strictObject({
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
  /** The sources it came from itself, its own first. */
  sourceIds: z.array(z.string()),
});
export type MotherLot = z.infer<typeof motherLot>;

/** A mother lot with the line of sources behind it, through blends too, so that no source is made to come from its own offspring. */
export async function loadMotherLot({ tx, nurseryId }: ReadContext, lotId: string): Promise<MotherLot | undefined> {
  const row = await tx.row(motherLot)`
    WITH RECURSIVE line AS (
      SELECT l.source_id FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ${lotId}::uuid
      UNION
      SELECT behind.source_id FROM line CROSS JOIN LATERAL (
        SELECT m.source_id FROM source s JOIN lot_named m ON m.nursery_id = s.nursery_id AND m.id = s.mother_lot_id WHERE s.nursery_id = ${nurseryId}::uuid AND s.id = line.source_id
        UNION ALL
        SELECT b.part_source_id FROM source_part b WHERE b.nursery_id = ${nurseryId}::uuid AND b.source_id = line.source_id) behind)
    SELECT l.id::text, l.code, l.plant_id::text AS "plantId", (SELECT array_agg(source_id::text) FROM line) AS "sourceIds"
      FROM lot_named l WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ${lotId}::uuid`;
  return row;
}

/** The day of gathering in the words it was told in: a day, or only a month, a season or a year. A winter carries the year in which it ends. */
const gatheredText = `CASE r.gathered_precision WHEN 'day' THEN to_char(r.gathered_on, 'YYYY-MM-DD') WHEN 'month' THEN to_char(r.gathered_on, 'YYYY-MM')
  WHEN 'year' THEN to_char(r.gathered_on, 'YYYY') WHEN 'season' THEN to_char(r.gathered_on + interval '1 month', 'YYYY-') ||
  CASE extract(month FROM r.gathered_on) WHEN 3 THEN 'spring' WHEN 6 THEN 'summer' WHEN 9 THEN 'autumn' ELSE 'winter' END END`;

export const sourceEdits = editedRow<{ sourceId: string }>({
  table: 'source',
  row: ({ sourceId }) => sql`r.id = ${sourceId}::uuid`,
  fields: {
    ...columns(
      'kind',
      'provenance',
      'seedZone',
      'origin',
      'collector',
      'permit',
      'vendor',
      'vendorLot',
      'pesticideStatement',
      'motherLotId',
      'note',
    ),
    ...columns('rawGrams', 'cleanedGrams', 'purity', 'seedsPerGram', 'sowFresh', 'neverDry', 'storage', 'storedOn'),
    gathered: gatheredText,
  },
});
