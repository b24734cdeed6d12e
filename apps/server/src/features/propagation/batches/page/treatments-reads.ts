import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

export const batchTreatment = z.strictObject({
  treatmentId: z.string(),
  entryId: z.string(),
  product: z.string(),
  registrationNo: z.nullable(z.string()),
  rate: z.nullable(z.string()),
  applicator: z.string(),
  target: z.string(),
  treatedAt: z.date(),
  reentryAt: z.nullable(z.date()),
});
export type BatchTreatment = z.infer<typeof batchTreatment>;

/** Treatments of the batch, and of the packs it was drawn from before that. */
export async function readBatchTreatments({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchTreatment[]> {
  return tx.rows(batchTreatment)`
    SELECT DISTINCT t.id::text AS "treatmentId", t.entry_id::text AS "entryId", t.product, t.registration_no AS "registrationNo", t.rate, t.applicator, t.target,
           t.treated_at AS "treatedAt", t.reentry_at AS "reentryAt"
      FROM treatments_of(${nurseryId}::uuid, ARRAY[${batchId}::uuid]) h JOIN treatment t ON t.nursery_id = ${nurseryId}::uuid AND t.entry_id = h.entry_id
     ORDER BY t.treated_at DESC`;
}
