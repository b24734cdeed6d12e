import { type SeedCaution, type SeedStorage, seedCautions, type ViabilityMethod } from '@rootclock/domain';
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

/** In the order of the ids; what is not this nursery's is left out. */
export async function loadSeedFacts({ tx, nurseryId, today }: ReadContext, sourceIds: readonly string[]): Promise<SeedFacts[]> {
  const rows = await tx.$queryRaw<Omit<SeedFacts, 'cautions'>[]>`
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
