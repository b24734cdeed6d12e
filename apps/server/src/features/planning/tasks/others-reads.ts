import type { TaskTest } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../trpc/operation.ts';

export const placeRow = z.strictObject({
  id: z.string(),
  code: z.string(),
  coverMd: z.nullable(z.string()),
  baitMd: z.nullable(z.string()),
  uncoverMd: z.nullable(z.string()),
  name: z.string(),
  parentId: z.nullable(z.string()),
  isRetired: z.boolean(),
});
export type PlaceRow = z.infer<typeof placeRow>;

/** Every place, retired ones too: what stood there is still told by their names. */
export async function readTaskPlaces({ tx, nurseryId }: ReadContext): Promise<PlaceRow[]> {
  return tx.rows(placeRow)`
    SELECT id::text, code, name, parent_id::text AS "parentId", retired_at IS NOT NULL AS "isRetired", cover_md AS "coverMd", bait_md AS "baitMd", uncover_md AS "uncoverMd"
      FROM place_told WHERE nursery_id = ${nurseryId}::uuid`;
}

const lastTest = z.strictObject({
  sourceId: z.string(),
  sourceCode: z.string(),
  plantName: z.string(),
  testedOn: z.string(),
});

/** The last test of each source in use, where its replicates disagreed. */
export async function readTaskTests({ tx, nurseryId }: ReadContext): Promise<TaskTest[]> {
  return tx.rows(lastTest)`
    WITH last AS (
      SELECT DISTINCT ON (t.source_id) t.source_id, t.tested_on, t.to_repeat FROM viability_told t
       WHERE t.nursery_id = ${nurseryId}::uuid AND t.withdrawn_at IS NULL ORDER BY t.source_id, t.tested_on DESC, t.to_repeat)
    SELECT s.id::text AS "sourceId", s.code AS "sourceCode", p.scientific_name AS "plantName", t.tested_on::text AS "testedOn"
      FROM last t JOIN source_named s ON s.nursery_id = ${nurseryId}::uuid AND s.id = t.source_id AND s.retired_at IS NULL
      JOIN plant_named p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
     WHERE t.to_repeat`;
}

export const tickRow = z.strictObject({
  key: z.string(),
  doneOn: z.string(),
  person: z.nullable(z.string()),
});
export type TickRow = z.infer<typeof tickRow>;

export async function readTicks({ tx, nurseryId }: ReadContext, since: string): Promise<TickRow[]> {
  return tx.rows(tickRow)`
    SELECT t.task_key AS key, t.done_on::text AS "doneOn", w.name AS person FROM task_tick t LEFT JOIN nursery_people() w ON w.person_id = t.person_id
     WHERE t.nursery_id = ${nurseryId}::uuid AND t.taken_back_at IS NULL AND t.done_on >= ${since}::date`;
}

const noticeRow = z.strictObject({ noticeDays: z.number() });

export async function readNotice({ tx, nurseryId }: ReadContext): Promise<number> {
  const row = await tx.row(
    noticeRow,
  )`SELECT notice_days AS "noticeDays" FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return row?.noticeDays ?? 0;
}
