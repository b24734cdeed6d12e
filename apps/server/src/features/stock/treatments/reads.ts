import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

/** A treatment that plants of a lot were under, on it or on what it came from. */
export const treatmentRow = z.strictObject({
  lotId: z.string(),
  entryId: z.string(),
  product: z.string(),
  registrationNo: z.nullable(z.string()),
  rate: z.nullable(z.string()),
  applicator: z.string(),
  target: z.string(),
  treatedOn: z.string(),
  treatedAt: z.string(),
  reentryAt: z.nullable(z.string()),
  note: z.string(),
  /** The lot or batch it was applied to: the lot itself, or where its plants stood then. */
  on: z.strictObject({ kind: z.enum(['lot', 'batch']), id: z.string(), code: z.string() }),
});
export type TreatmentRow = z.infer<typeof treatmentRow>;

/** All treatments that plants of a lot were under, here or where they came from, newest first. */
export async function loadTreatmentHistory({ tx, nurseryId }: ReadContext, lotId: string): Promise<TreatmentRow[]> {
  return tx.rows(treatmentRow)`
    SELECT DISTINCT ON (t.treated_at, t.id) h.subject_id::text AS "lotId", h.entry_id::text AS "entryId", t.product, t.registration_no AS "registrationNo", t.rate, t.applicator, t.target,
           h.happened_on::text AS "treatedOn", to_char(t.treated_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "treatedAt",
           to_char(t.reentry_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "reentryAt", e.note,
           jsonb_build_object('kind', h.on_kind, 'id', h.on_id, 'code', coalesce(l.code, b.code)) AS "on"
      FROM treatments_of(${nurseryId}::uuid, ARRAY[${lotId}::uuid]) h
      JOIN entry e ON e.nursery_id = ${nurseryId}::uuid AND e.id = h.entry_id
      JOIN treatment t ON t.nursery_id = ${nurseryId}::uuid AND t.entry_id = h.entry_id
      LEFT JOIN lot l ON l.nursery_id = ${nurseryId}::uuid AND l.id = h.on_id
      LEFT JOIN batch b ON b.nursery_id = ${nurseryId}::uuid AND b.id = h.on_id
     ORDER BY t.treated_at DESC, t.id, h.on_id = h.subject_id DESC, h.on_id`;
}

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
