import { COUNT_KINDS, OBSERVATION_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** One entry of the batch's story, those that were reversed included. */
export const batchStoryEntry = z.strictObject({
  entryId: z.string(),
  version: z.number(),
  kind: z.string(),
  happenedOn: z.string(),
  recordedAt: z.date(),
  personName: z.nullable(z.string()),
  cause: z.nullable(z.string()),
  note: z.string(),
  details: z.record(z.string(), z.unknown()),
  reversesId: z.nullable(z.string()),
  /** The entry that took this one back. */
  reversedById: z.nullable(z.string()),
  count: z.nullable(
    z.strictObject({ countKind: z.enum(COUNT_KINDS), emergedUnits: z.number(), unexplainedUnits: z.number() }),
  ),
  /** What was seen, of this batch among others. */
  observed: z.nullable(
    z.strictObject({ kind: z.enum(OBSERVATION_KINDS), result: z.nullable(z.string()), amount: z.nullable(z.number()) }),
  ),
  /** `drawnFor` and `drawnFrom` are codes of other batches: that packs of this one were drawn for, or that this one was drawn from. */
  movements: z.array(
    z.strictObject({
      fromPlace: z.nullable(z.string()),
      toPlace: z.nullable(z.string()),
      drawnFor: z.nullable(z.string()),
      drawnFrom: z.nullable(z.string()),
      toLotId: z.nullable(z.string()),
      toLotCode: z.nullable(z.string()),
      outside: z.nullable(z.string()),
      fromUnits: z.number(),
      toUnits: z.number(),
    }),
  ),
});
export type BatchStoryEntry = z.infer<typeof batchStoryEntry>;

export async function readBatchStory({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchStoryEntry[]> {
  return tx.rows(batchStoryEntry)`
    WITH own AS (SELECT id FROM account_told WHERE nursery_id = ${nurseryId}::uuid AND batch_id = ${batchId}::uuid),
    involved AS (
      SELECT v.entry_id FROM movement_told v JOIN own o ON o.id = v.from_account_id WHERE v.nursery_id = ${nurseryId}::uuid
      UNION SELECT v.entry_id FROM movement_told v JOIN own o ON o.id = v.to_account_id WHERE v.nursery_id = ${nurseryId}::uuid
      UNION SELECT entry_id FROM entry_about WHERE nursery_id = ${nurseryId}::uuid AND subject_id = ${batchId}::uuid)
    SELECT e.id::text AS "entryId", e.version::int, e.kind, e.happened_on::text AS "happenedOn", e.recorded_at AS "recordedAt", who.name AS "personName", e.cause, e.note,
           e.details, e.reverses_id::text AS "reversesId",
           (SELECT r.id::text FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS "reversedById",
           (SELECT jsonb_build_object('countKind', c.count_kind, 'emergedUnits', c.emerged_units, 'unexplainedUnits', c.unexplained_units)
              FROM batch_count c WHERE c.nursery_id = e.nursery_id AND c.entry_id = e.id AND c.batch_id = ${batchId}::uuid) AS count,
           (SELECT jsonb_build_object('kind', o.kind, 'result', o.result, 'amount', o.amount) FROM observation_told o WHERE o.nursery_id = e.nursery_id AND o.entry_id = e.id LIMIT 1) AS observed,
           coalesce((SELECT jsonb_agg(jsonb_build_object('fromPlace', fw.code, 'toPlace', tw.code, 'toLotId', tl.id, 'toLotCode', tl.code, 'drawnFor', tb.code, 'drawnFrom', fb.code,
                       'outside', coalesce(f.outside, t.outside), 'fromUnits', m.from_units, 'toUnits', m.to_units) ORDER BY m.line)
                       FROM movement_told m
                       JOIN account_told f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
                       JOIN account_told t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
                       LEFT JOIN place_named fw ON fw.nursery_id = f.nursery_id AND fw.id = f.place_id
                       LEFT JOIN place_named tw ON tw.nursery_id = t.nursery_id AND tw.id = t.place_id
                       LEFT JOIN lot_named tl ON tl.nursery_id = t.nursery_id AND tl.id = t.lot_id
                       LEFT JOIN batch_named fb ON fb.nursery_id = f.nursery_id AND fb.id = f.batch_id AND fb.id <> ${batchId}::uuid
                       LEFT JOIN batch_named tb ON tb.nursery_id = t.nursery_id AND tb.id = t.batch_id AND tb.id <> ${batchId}::uuid
                      WHERE m.nursery_id = e.nursery_id AND m.entry_id = e.id AND (f.batch_id = ${batchId}::uuid OR t.batch_id = ${batchId}::uuid)), '[]') AS movements
      FROM involved i
      JOIN entry_told e ON e.nursery_id = ${nurseryId}::uuid AND e.id = i.entry_id
      LEFT JOIN nursery_people() who ON who.person_id = e.person_id
     ORDER BY e.happened_on DESC, e.version DESC`;
}
