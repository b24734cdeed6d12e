import * as z from 'zod/mini';
import { raised } from '../../../db/editions.ts';
import { sql, type Sql } from '../../../db/sql.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface NewTreatment {
  placeId: string | null;
  product: string;
  registrationNo: string | null;
  rate: string | null;
  applicator: string;
  target: string;
  treatedAt: string;
  reentryAt: string | null;
}

const dayInNursery = z.strictObject({ day: z.string() });

/** The calendar day of an instant in the nursery's zone. */
export async function dayOf({ tx, nurseryId }: ReadContext, at: string): Promise<string | undefined> {
  const row = await tx.row(
    dayInNursery,
  )`SELECT (${at}::timestamptz AT TIME ZONE zone)::date::text AS day FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return row?.day;
}

/** To be written beside the entry of the treatment. */
export const treatmentOf = ({ nurseryId, commandId }: CommandContext, treatment: NewTreatment): Sql => sql`
  INSERT INTO treatment (nursery_id, id, entry_id, place_id, product, registration_no, rate, applicator, target, treated_at, reentry_at)
  VALUES (${nurseryId}::uuid, ${commandId}::uuid, ${commandId}::uuid, ${treatment.placeId}::uuid, ${treatment.product}, ${treatment.registrationNo}, ${treatment.rate},
          ${treatment.applicator}, ${treatment.target}, ${treatment.treatedAt}::timestamptz, ${treatment.reentryAt}::timestamptz)`;

/** How a place was closed before a treatment closed it longer. */
export const closing = z.strictObject({
  placeId: z.string(),
  code: z.string(),
  untilAt: z.nullable(z.string()),
  reason: z.nullable(z.string()),
});
export type Closing = z.infer<typeof closing>;

/** Places that a closing until then would close longer than they are. */
export async function loadClosings(
  { tx, nurseryId }: ReadContext,
  placeIds: readonly string[],
  untilAt: string,
): Promise<Closing[]> {
  return tx.rows(closing)`
    SELECT id::text AS "placeId", code, closed_until_at::text AS "untilAt", closed_reason AS reason FROM place
     WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[]) AND (closed_until_at IS NULL OR closed_until_at < ${untilAt}::timestamptz)
     ORDER BY code`;
}

export async function closePlaces(
  context: CommandContext,
  placeIds: readonly string[],
  untilAt: string,
  reason: string,
): Promise<void> {
  const { tx, nurseryId, touched } = context;
  touched.features.add('stock');
  await tx.run`
    UPDATE place SET closed_until_at = ${untilAt}::timestamptz, closed_reason = ${reason}, ${raised(context)}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[])`;
}

/**
 * Puts places back to how they were closed before, where they are still closed as this treatment closed them. A closing that came from
 * another treatment which was itself taken back is not restored.
 */
export async function reopenPlaces(
  context: CommandContext,
  entryId: string,
  closings: readonly Closing[],
): Promise<void> {
  const { tx, nurseryId, touched } = context;
  touched.features.add('stock');
  await tx.run`
    UPDATE place p SET closed_until_at = CASE WHEN b.stale THEN NULL ELSE b."untilAt" END, closed_reason = CASE WHEN b.stale THEN NULL ELSE b.reason END,
           ${raised(context)}
      FROM (SELECT c.*, EXISTS (SELECT 1 FROM treatment o JOIN entry r ON r.nursery_id = o.nursery_id AND r.reverses_id = o.entry_id
                                 WHERE o.nursery_id = ${nurseryId}::uuid AND o.reentry_at = c."untilAt" AND o.product = c.reason) AS stale
              FROM jsonb_to_recordset(${JSON.stringify(closings)}::jsonb) AS c ("placeId" uuid, "untilAt" timestamptz, reason text)) b,
           treatment t
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = b."placeId" AND t.nursery_id = p.nursery_id AND t.entry_id = ${entryId}::uuid
       AND p.closed_until_at = t.reentry_at AND p.closed_reason = t.product`;
}

const descendant = z.strictObject({ kind: z.enum(['lot', 'batch']), id: z.string() });

/** What grew out of treated lots and batches may have been treated with them: it is planned anew as they are. */
export async function touchDescent({ tx, nurseryId, touched }: CommandContext, ids: readonly string[]): Promise<void> {
  const rows = await tx.rows(descendant)`
    WITH RECURSIVE descent (kind, id) AS (
      SELECT '', s.id FROM unnest(${[...ids]}::uuid[]) AS s (id)
      UNION
      SELECT came.kind, came.id FROM descent d CROSS JOIN LATERAL (
        SELECT 'lot' AS kind, g.child_lot_id AS id FROM lineage g WHERE g.nursery_id = ${nurseryId}::uuid AND g.parent_id = d.id
        UNION ALL SELECT 'batch', b.id FROM batch b WHERE b.nursery_id = ${nurseryId}::uuid AND b.parent_batch_id = d.id
        UNION ALL
        -- Plants that went back when an entry was taken back.
        SELECT CASE WHEN t.lot_id IS NULL THEN 'batch' ELSE 'lot' END, coalesce(t.lot_id, t.batch_id)
          FROM account f
          JOIN movement m ON m.nursery_id = f.nursery_id AND m.from_account_id = f.id
          JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id AND t.kind = 'place' AND coalesce(t.lot_id, t.batch_id) <> d.id
          JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind = 'reverse'
         WHERE f.nursery_id = ${nurseryId}::uuid AND (f.lot_id = d.id OR f.batch_id = d.id)
        OFFSET 0) came)
    SELECT kind, id::text FROM descent WHERE kind <> ''`;
  for (const { kind, id } of rows)
    if (kind === 'lot') touched.lotOfOtherUse(id);
    else touched.batch(id);
}
