import type { ViabilityMethod } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface NewTest {
  id: string;
  sourceId: string;
  testedOn: string;
  method: ViabilityMethod;
  seedsPerReplicate: number;
  replicates: readonly number[];
  hardShare: number;
  dormantShare: number;
  meanShare: number;
  toRepeat: boolean;
  note: string;
}

export async function insertTest(context: CommandContext, test: NewTest): Promise<void> {
  context.touched.features.add('sources');
  await context.tx.run`
    INSERT INTO viability_test (nursery_id, id, source_id, tested_on, method, seeds_per_replicate, replicates, hard_share, dormant_share, mean_share, to_repeat, note)
    VALUES (${context.nurseryId}::uuid, ${test.id}::uuid, ${test.sourceId}::uuid, ${test.testedOn}::date, ${test.method}, ${test.seedsPerReplicate}, ${[...test.replicates]}::int[],
            ${test.hardShare}::float8, ${test.dormantShare}::float8, ${test.meanShare}::float8, ${test.toRepeat}, ${test.note})`;
}

const testRow = z.strictObject({ id: z.string(), withdrawn: z.boolean() });

export async function loadTest(
  { tx, nurseryId }: ReadContext,
  id: string,
): Promise<{ id: string; withdrawn: boolean } | undefined> {
  const row = await tx.row(testRow)`
    SELECT id::text, withdrawn_at IS NOT NULL AS withdrawn FROM viability_test WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return row;
}

export async function withdrawTest(context: CommandContext, id: string): Promise<void> {
  context.touched.features.add('sources');
  await context.tx
    .run`UPDATE viability_test SET withdrawn_at = ${context.now} WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}
