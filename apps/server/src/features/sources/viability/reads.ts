import { VIABILITY_METHODS, type ViabilityMethod } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';
import { type Agreement, agreementOf } from './agreement.ts';

export interface ViabilityTestRow extends Agreement {
  testId: string;
  testedOn: string;
  method: ViabilityMethod;
  seedsPerReplicate: number;
  replicates: number[];
  /** Shares of all that were tested, 0 to 1. */
  meanShare: number;
  hardShare: number;
  dormantShare: number;
  toRepeat: boolean;
  withdrawn: boolean;
  note: string;
}

const storedTest = z.strictObject({
  note: z.string(),
  method: z.enum(VIABILITY_METHODS),
  testedOn: z.string(),
  testId: z.string(),
  seedsPerReplicate: z.number(),
  replicates: z.array(z.number()),
  meanShare: z.number(),
  hardShare: z.number(),
  dormantShare: z.number(),
  toRepeat: z.boolean(),
  withdrawn: z.boolean(),
});

/** All tests of a source, the latest first, those that were withdrawn among them. */
export async function readTests({ tx, nurseryId }: ReadContext, sourceId: string): Promise<ViabilityTestRow[]> {
  const rows = await tx.rows(storedTest)`
    SELECT id::text AS "testId", tested_on::text AS "testedOn", method, seeds_per_replicate AS "seedsPerReplicate", replicates, mean_share::float8 AS "meanShare",
           hard_share::float8 AS "hardShare", dormant_share::float8 AS "dormantShare", to_repeat AS "toRepeat", withdrawn_at IS NOT NULL AS withdrawn, note
      FROM viability_test WHERE nursery_id = ${nurseryId}::uuid AND source_id = ${sourceId}::uuid ORDER BY tested_on DESC, id`;
  return rows.map((row) => ({ ...row, ...agreementOf(row) }));
}
