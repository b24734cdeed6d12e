import { raised } from '../../../db/editions.ts';
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

/** The calendar day of an instant in the nursery's zone. */
export async function dayOf({ tx, nurseryId }: ReadContext, at: string): Promise<string | undefined> {
  const [row] = await tx.$queryRaw<{ day: string }[]>`SELECT (${at}::timestamptz AT TIME ZONE zone)::date::text AS day FROM nursery WHERE id = ${nurseryId}::uuid`;
  return row?.day;
}

export async function insertTreatment({ tx, nurseryId }: CommandContext, entryId: string, treatment: NewTreatment): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO treatment (nursery_id, id, entry_id, place_id, product, registration_no, rate, applicator, target, treated_at, reentry_at)
    VALUES (${nurseryId}::uuid, ${entryId}::uuid, ${entryId}::uuid, ${treatment.placeId}::uuid, ${treatment.product}, ${treatment.registrationNo}, ${treatment.rate},
            ${treatment.applicator}, ${treatment.target}, ${treatment.treatedAt}::timestamptz, ${treatment.reentryAt}::timestamptz)`;
}

/** How a place was closed before a treatment closed it longer. */
export interface Closing {
  placeId: string;
  code: string;
  untilAt: string | null;
  reason: string | null;
}

/** Places that a closing until then would close longer than they are. */
export async function loadClosings({ tx, nurseryId }: ReadContext, placeIds: readonly string[], untilAt: string): Promise<Closing[]> {
  return tx.$queryRaw<Closing[]>`
    SELECT id::text AS "placeId", code, closed_until_at::text AS "untilAt", closed_reason AS reason FROM place
     WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[]) AND (closed_until_at IS NULL OR closed_until_at < ${untilAt}::timestamptz)
     ORDER BY code`;
}

export async function closePlaces(context: CommandContext, placeIds: readonly string[], untilAt: string, reason: string): Promise<void> {
  const { tx, nurseryId, touched } = context;
  touched.features.add('stock');
  await tx.$executeRaw`
    UPDATE place SET closed_until_at = ${untilAt}::timestamptz, closed_reason = ${reason}, ${raised(context)}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[])`;
}

/**
 * Puts places back to how they were closed before, where they are still closed as this treatment closed them. A closing that came from
 * another treatment which was itself taken back is not restored.
 */
export async function reopenPlaces(context: CommandContext, entryId: string, closings: readonly Closing[]): Promise<void> {
  const { tx, nurseryId, touched } = context;
  touched.features.add('stock');
  await tx.$executeRaw`
    UPDATE place p SET closed_until_at = CASE WHEN b.stale THEN NULL ELSE b."untilAt" END, closed_reason = CASE WHEN b.stale THEN NULL ELSE b.reason END,
           ${raised(context)}
      FROM (SELECT c.*, EXISTS (SELECT 1 FROM treatment o JOIN entry r ON r.nursery_id = o.nursery_id AND r.reverses_id = o.entry_id
                                 WHERE o.nursery_id = ${nurseryId}::uuid AND o.reentry_at = c."untilAt" AND o.product = c.reason) AS stale
              FROM jsonb_to_recordset(${JSON.stringify(closings)}::jsonb) AS c ("placeId" uuid, "untilAt" timestamptz, reason text)) b,
           treatment t
     WHERE p.nursery_id = ${nurseryId}::uuid AND p.id = b."placeId" AND t.nursery_id = p.nursery_id AND t.entry_id = ${entryId}::uuid
       AND p.closed_until_at = t.reentry_at AND p.closed_reason = t.product`;
}
