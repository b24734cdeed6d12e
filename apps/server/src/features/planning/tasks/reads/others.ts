import type { TaskPlace, TaskSpringCount, TaskTest } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';

export interface PlaceRow extends TaskPlace {
  name: string;
  parentId: string | null;
  isRetired: boolean;
}

/** Every place, retired ones too: what stood there is still told by their names. */
export async function readTaskPlaces({ tx, nurseryId }: ReadContext): Promise<PlaceRow[]> {
  return tx.$queryRaw<PlaceRow[]>`
    SELECT id::text, code, name, parent_id::text AS "parentId", retired_at IS NOT NULL AS "isRetired", cover_md AS "coverMd", bait_md AS "baitMd", uncover_md AS "uncoverMd"
      FROM place WHERE nursery_id = ${nurseryId}::uuid`;
}

/**
 * The last spring count of each open lot at a place, where some were not yet up. The question is over once the lot was counted again there, or
 * no more stand there than were up.
 */
export async function readTaskSpringCounts({ tx, nurseryId }: ReadContext, since: string): Promise<TaskSpringCount[]> {
  return tx.$queryRaw<TaskSpringCount[]>`
    WITH counts AS (
      SELECT DISTINCT ON (s.lot_id, s.place_id) s.*, e.version FROM spring_count s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
       WHERE s.nursery_id = ${nurseryId}::uuid AND s.counted_on >= ${since}::date
         AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
       ORDER BY s.lot_id, s.place_id, s.counted_on DESC, e.version DESC)
    SELECT l.id::text AS "lotId", l.code AS "lotCode", p.scientific_name AS "plantName", c.place_id::text AS "placeId", c.counted_on::text AS "countedOn",
           least(c.not_up_units, a.units - c.up_units)::int AS "notUpUnits", p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd"
      FROM counts c
      JOIN lot l ON l.nursery_id = c.nursery_id AND l.id = c.lot_id AND l.closed_on IS NULL
      JOIN plant p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN account a ON a.nursery_id = c.nursery_id AND a.lot_id = c.lot_id AND a.place_id = c.place_id AND a.kind = 'place' AND a.units > c.up_units
     WHERE c.not_up_units > 0
       AND NOT EXISTS (
         SELECT 1 FROM entry_subject s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
          WHERE s.nursery_id = c.nursery_id AND s.subject_id = c.lot_id AND e.kind = 'count' AND e.version > c.version AND e.happened_on >= c.counted_on
            AND (e.details ->> 'placeId' IS NULL OR e.details ->> 'placeId' = c.place_id::text)
            AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id))`;
}

/** The last test of each source in use, where its replicates disagreed. */
export async function readTaskTests({ tx, nurseryId }: ReadContext): Promise<TaskTest[]> {
  return tx.$queryRaw<TaskTest[]>`
    WITH last AS (
      SELECT DISTINCT ON (t.source_id) t.source_id, t.tested_on, t.to_repeat FROM viability_test t
       WHERE t.nursery_id = ${nurseryId}::uuid AND t.withdrawn_at IS NULL ORDER BY t.source_id, t.tested_on DESC, t.to_repeat)
    SELECT s.id::text AS "sourceId", s.code AS "sourceCode", p.scientific_name AS "plantName", t.tested_on::text AS "testedOn"
      FROM last t JOIN source s ON s.nursery_id = ${nurseryId}::uuid AND s.id = t.source_id AND s.retired_at IS NULL
      JOIN plant p ON p.nursery_id = s.nursery_id AND p.id = s.plant_id
     WHERE t.to_repeat`;
}

export interface TickRow {
  key: string;
  doneOn: string;
  person: string | null;
}

export async function readTicks({ tx, nurseryId }: ReadContext, since: string): Promise<TickRow[]> {
  return tx.$queryRaw<TickRow[]>`
    SELECT t.task_key AS key, t.done_on::text AS "doneOn", w.name AS person FROM task_tick t LEFT JOIN nursery_people() w ON w.person_id = t.person_id
     WHERE t.nursery_id = ${nurseryId}::uuid AND t.taken_back_at IS NULL AND t.done_on >= ${since}::date`;
}

export async function readNotice({ tx, nurseryId }: ReadContext): Promise<number> {
  const [row] = await tx.$queryRaw<{ noticeDays: number }[]>`SELECT notice_days AS "noticeDays" FROM nursery WHERE id = ${nurseryId}::uuid`;
  return row?.noticeDays ?? 0;
}
