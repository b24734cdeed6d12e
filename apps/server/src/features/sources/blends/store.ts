import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface PartDraft {
  sourceId: string;
  grams: number;
}

/** Writes down what a blend is made of; it is made once, and never of itself, since its parts were there before it. */
export async function insertParts(
  { tx, nurseryId }: CommandContext,
  blendId: string,
  parts: readonly PartDraft[],
): Promise<void> {
  await tx.run`
    INSERT INTO source_part (nursery_id, source_id, part_source_id, grams)
    SELECT ${nurseryId}::uuid, ${blendId}::uuid, p."sourceId", p.grams FROM jsonb_to_recordset(${JSON.stringify(parts)}::jsonb) AS p ("sourceId" uuid, grams numeric)`;
}

const batchTally = z.strictObject({ batches: z.number() });

/** How many batches were started from a source and stand. */
export async function countBatches({ tx, nurseryId }: ReadContext, sourceId: string): Promise<number> {
  const row = await tx.row(batchTally)`
    SELECT count(*)::int AS batches FROM batch_told b WHERE b.nursery_id = ${nurseryId}::uuid AND b.source_id = ${sourceId}::uuid
       AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = b.nursery_id AND r.reverses_id = b.created_entry_id)`;
  return row?.batches ?? 0;
}
