import { BATCH_UNITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** How an earlier batch of the same plant and method came up or rooted. */
export const earlierCourse = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  startedOn: z.string(),
  unit: z.enum(BATCH_UNITS),
  /** Cells or pieces it began with; of trays and packs the seeds sown. */
  sown: z.number(),
  /** Counts that stand, by day. */
  counts: z.array(z.strictObject({ on: z.string(), emergedUnits: z.number() })),
});
export type EarlierCourse = z.infer<typeof earlierCourse>;

/** As many lines as can still be told apart. */
const MOST = 5;

/** The latest earlier batches whose share is known: started before, counted at least twice, with the seeds known where plants alone are counted. */
export async function readEarlierCourses({ tx, nurseryId }: ReadContext, batchId: string): Promise<EarlierCourse[]> {
  return tx.rows(earlierCourse)`
    SELECT b.id::text AS "batchId", b.code, b.started_on::text AS "startedOn", b.unit, sown.units AS sown, seen.counts
      FROM batch_named o
      JOIN batch_told b ON b.nursery_id = o.nursery_id AND b.plant_id = o.plant_id AND b.method = o.method AND b.id <> o.id AND (b.started_on, b.code) < (o.started_on, o.code)
      JOIN LATERAL (
        SELECT CASE WHEN b.unit IN ('cell', 'piece') THEN (SELECT sum(m.to_units)::int FROM movement_told m WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id)
                    ELSE b.seeds_sown END AS units) sown ON sown.units > 0
      JOIN LATERAL (
        SELECT jsonb_agg(jsonb_build_object('on', c.counted_on, 'emergedUnits', c.emerged_units) ORDER BY c.counted_on, e.version) AS counts, count(*) AS many
          FROM batch_count c JOIN entry_told e ON e.nursery_id = c.nursery_id AND e.id = c.entry_id
         WHERE c.nursery_id = b.nursery_id AND c.batch_id = b.id
           AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = c.nursery_id AND r.reverses_id = c.entry_id)) seen ON seen.many > 1
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.id = ${batchId}::uuid
       AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = b.nursery_id AND r.reverses_id = b.created_entry_id)
     ORDER BY b.started_on DESC, b.code DESC LIMIT ${MOST}`;
}
