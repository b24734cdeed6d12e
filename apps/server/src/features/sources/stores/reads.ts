import {
  SEED_MOVEMENT_KINDS,
  SEED_STORAGES,
  STANDINGS,
  VIABILITY_METHODS,
  type SeedCaution,
  type SeedStorage,
  seedCautions,
  type ViabilityMethod,
} from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

/** What is known of a source's seed, for whoever is about to sow it. Shares are 0 to 1. */
export interface SeedFacts {
  sourceId: string;
  /** Null where nothing was ever weighed into the store. */
  gramsLeft: number | null;
  purity: number | null;
  seedsPerGram: number | null;
  /** Of the latest test that stands and agrees with itself; of the latest at all where none does. Null without any test. */
  germination: number | null;
  hard: number | null;
  dormant: number | null;
  testedOn: string | null;
  testMethod: ViabilityMethod | null;
  /** The figures rest on a test that is to be repeated, there being no better one. */
  testToRepeat: boolean;
  sowFresh: boolean;
  neverDry: boolean;
  storage: SeedStorage | null;
  gatheredOn: string | null;
  storedOn: string | null;
  cautions: SeedCaution[];
}

const seedFactsRow = z.strictObject({
  storage: z.nullable(z.enum(SEED_STORAGES)),
  sourceId: z.string(),
  gramsLeft: z.nullable(z.number()),
  purity: z.nullable(z.number()),
  seedsPerGram: z.nullable(z.number()),
  germination: z.nullable(z.number()),
  hard: z.nullable(z.number()),
  dormant: z.nullable(z.number()),
  testedOn: z.nullable(z.string()),
  testMethod: z.nullable(z.enum(VIABILITY_METHODS)),
  testToRepeat: z.boolean(),
  sowFresh: z.boolean(),
  neverDry: z.boolean(),
  gatheredOn: z.nullable(z.string()),
  storedOn: z.nullable(z.string()),
});

/** In the order of the ids; what is not this nursery's is left out. */
export async function loadSeedFacts(
  { tx, nurseryId, today }: ReadContext,
  sourceIds: readonly string[],
): Promise<SeedFacts[]> {
  const rows = await tx.rows(seedFactsRow)`
    SELECT s.id::text AS "sourceId", t.grams::float8 AS "gramsLeft", s.purity::float8 AS purity, s.seeds_per_gram::float8 AS "seedsPerGram",
           v.mean_share::float8 AS germination, v.hard_share::float8 AS hard, v.dormant_share::float8 AS dormant, v.tested_on::text AS "testedOn",
           v.method AS "testMethod", coalesce(v.to_repeat, false) AS "testToRepeat", s.sow_fresh AS "sowFresh", s.never_dry AS "neverDry", s.storage,
           s.gathered_on::text AS "gatheredOn", s.stored_on::text AS "storedOn"
      FROM unnest(${[...sourceIds]}::uuid[]) WITH ORDINALITY AS wanted (id, place)
      JOIN source s ON s.nursery_id = ${nurseryId}::uuid AND s.id = wanted.id
      LEFT JOIN seed_store t ON t.nursery_id = s.nursery_id AND t.source_id = s.id
      LEFT JOIN LATERAL (
        SELECT * FROM viability_test v WHERE v.nursery_id = s.nursery_id AND v.source_id = s.id AND v.withdrawn_at IS NULL
         ORDER BY v.to_repeat, v.tested_on DESC, v.id LIMIT 1) v ON true
     ORDER BY wanted.place`;
  return rows.map((row) => ({ ...row, cautions: seedCautions(row, today) }));
}

export const seedMovementRow = z.strictObject({
  movementId: z.string(),
  kind: z.enum(SEED_MOVEMENT_KINDS),
  grams: z.number(),
  happenedOn: z.string(),
  batchId: z.nullable(z.string()),
  batchCode: z.nullable(z.string()),
  /** The ledger entry that used it: taken back with that entry alone. */
  entryId: z.nullable(z.string()),
  /** For a blend the source on the other side, where there is only one. */
  otherSourceId: z.nullable(z.string()),
  otherSourceCode: z.nullable(z.string()),
  takenBack: z.boolean(),
  /** Booked by whoever reads. */
  mine: z.boolean(),
  note: z.string(),
});
export type SeedMovementRow = z.infer<typeof seedMovementRow>;

/** The most bookings that a page shows; the sums are of all. */
const MOST = 200;

/** What came into a store and what left it, the latest first. A booking and its taking back stand as one row that says so. */
export async function readSeedMovements(
  { tx, nurseryId, personId }: ReadContext,
  sourceId: string,
): Promise<SeedMovementRow[]> {
  return tx.rows(seedMovementRow)`
    SELECT m.id::text AS "movementId", m.kind, m.grams::float8 AS grams, m.happened_on::text AS "happenedOn", m.batch_id::text AS "batchId", b.code AS "batchCode",
           m.entry_id::text AS "entryId", o.id::text AS "otherSourceId", o.code AS "otherSourceCode", m.person_id = ${personId}::uuid AS mine, m.note,
           EXISTS (SELECT 1 FROM seed_movement r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.id) AS "takenBack"
      FROM seed_movement m
      LEFT JOIN command_taken c ON c.nursery_id = m.nursery_id AND c.id = m.command_id
      LEFT JOIN batch_named b ON b.nursery_id = m.nursery_id AND b.id = m.batch_id
      LEFT JOIN seed_movement x ON m.kind = 'blended-out' AND x.nursery_id = m.nursery_id AND x.command_id = m.command_id AND x.kind = 'blended-in'
      LEFT JOIN source o ON o.nursery_id = x.nursery_id AND o.id = x.source_id
     WHERE m.nursery_id = ${nurseryId}::uuid AND m.source_id = ${sourceId}::uuid AND m.reverses_id IS NULL
     ORDER BY m.happened_on DESC, c.version DESC, m.id LIMIT ${MOST}`;
}

const receivedGrams = z.strictObject({ grams: z.number() });

/** Grams that came into a store in all and were not taken back: what the grams left are measured against. */
export async function readGramsIn({ tx, nurseryId }: ReadContext, sourceId: string): Promise<number> {
  const row = await tx.row(receivedGrams)`
    SELECT coalesce(sum(m.grams), 0)::float8 AS grams FROM seed_movement m
     WHERE m.nursery_id = ${nurseryId}::uuid AND m.source_id = ${sourceId}::uuid AND m.grams > 0 AND m.reverses_id IS NULL
       AND NOT EXISTS (SELECT 1 FROM seed_movement r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.id)`;
  return row?.grams ?? 0;
}

/** What the plant's own pages say of its seed, for where the source says nothing. */
export const plantSeed = z.strictObject({
  seedsPerGram: z.number(),
  standing: z.enum(STANDINGS),
  source: z.nullable(z.string()),
});
export type PlantSeed = z.infer<typeof plantSeed>;

export async function readPlantSeed({ tx, nurseryId }: ReadContext, plantId: string): Promise<PlantSeed | null> {
  const row = await tx.row(plantSeed)`
    SELECT (value #>> '{}')::float8 AS "seedsPerGram", standing, source FROM plant_told
     WHERE nursery_id = ${nurseryId}::uuid AND plant_id = ${plantId}::uuid AND field = 'seedsPerGram' AND jsonb_typeof(value) = 'number'`;
  return row ?? null;
}
