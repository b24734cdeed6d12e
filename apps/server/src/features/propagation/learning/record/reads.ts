import { PROPAGATION_METHODS, ROOT_HABITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../../db/sql.ts';
import type { ReadContext } from '../../../../trpc/operation.ts';

export const recordPlant = z.strictObject({
  plantId: z.string(),
  code: z.string(),
  scientificName: z.string(),
  vernacularName: z.string(),
  genus: z.string(),
  rootHabit: z.enum(ROOT_HABITS),
});
export type RecordPlant = z.infer<typeof recordPlant>;

export async function readPlants({ tx, nurseryId }: ReadContext, plantIds: readonly string[]): Promise<RecordPlant[]> {
  return tx.rows(recordPlant)`
    SELECT id::text AS "plantId", code, scientific_name AS "scientificName", vernacular_name AS "vernacularName", genus, root_habit AS "rootHabit"
      FROM plant_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...plantIds]}::uuid[]) ORDER BY scientific_name`;
}

/** The course of one batch of a plant, as days. */
export const batchCourse = z.strictObject({
  method: z.enum(PROPAGATION_METHODS),
  startedOn: z.string(),
  /** The first potting that stands. */
  pottedOn: z.nullable(z.string()),
  /** The first day on which the root balls of one of its lots were found to hold. */
  readyOn: z.nullable(z.string()),
  /** The day the last of it left, the lots made of it included; null while anything stands. */
  endedOn: z.nullable(z.string()),
});
export type BatchCourse = z.infer<typeof batchCourse>;

/** All batches of a plant whose start stands; lots are followed through potting up, splitting and merging. */
export async function readBatchCourses({ tx, nurseryId }: ReadContext, plantId: string): Promise<BatchCourse[]> {
  const stands = (entryId: Sql) =>
    sql`NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = ${nurseryId}::uuid AND r.reverses_id = ${entryId})`;
  return tx.rows(batchCourse)`
    WITH RECURSIVE own AS MATERIALIZED (
      SELECT b.id, b.method, b.started_on, b.closed_on FROM batch_told b WHERE b.nursery_id = ${nurseryId}::uuid AND b.plant_id = ${plantId}::uuid AND ${stands(sql`b.created_entry_id`)}),
    family (batch_id, lot_id) AS (
      SELECT o.id, g.child_lot_id FROM own o JOIN lineage_told g ON g.nursery_id = ${nurseryId}::uuid AND g.parent_id = o.id
      UNION SELECT f.batch_id, g.child_lot_id FROM family f JOIN lineage_told g ON g.nursery_id = ${nurseryId}::uuid AND g.parent_id = f.lot_id),
    potted AS (
      SELECT o.id, min(e.happened_on) AS on_day FROM own o JOIN account_told a ON a.nursery_id = ${nurseryId}::uuid AND a.batch_id = o.id
        JOIN movement_told m ON m.nursery_id = a.nursery_id AND m.from_account_id = a.id JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind = 'pot'
       WHERE ${stands(sql`e.id`)} GROUP BY o.id),
    held AS (
      SELECT s.subject_id AS lot_id, min(e.happened_on) AS on_day FROM (SELECT DISTINCT lot_id FROM family) f
        JOIN entry_about s ON s.nursery_id = ${nurseryId}::uuid AND s.subject_id = f.lot_id JOIN observation_told v ON v.nursery_id = s.nursery_id AND v.entry_id = s.entry_id
        JOIN entry_told e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
       WHERE v.kind = 'root-ball' AND v.result = 'holds' AND ${stands(sql`e.id`)} GROUP BY s.subject_id),
    grown AS (
      SELECT f.batch_id, min(h.on_day) FILTER (WHERE l.root_checked_on IS NOT NULL) AS ready_on, bool_or(l.closed_on IS NULL) AS open, max(l.closed_on) AS ended_on
        FROM family f JOIN lot_named l ON l.nursery_id = ${nurseryId}::uuid AND l.id = f.lot_id LEFT JOIN held h ON h.lot_id = l.id GROUP BY f.batch_id)
    SELECT o.method, o.started_on::text AS "startedOn", p.on_day::text AS "pottedOn", g.ready_on::text AS "readyOn",
           CASE WHEN o.closed_on IS NULL OR coalesce(g.open, false) THEN NULL ELSE greatest(o.closed_on, g.ended_on) END::text AS "endedOn"
      FROM own o LEFT JOIN potted p ON p.id = o.id LEFT JOIN grown g ON g.batch_id = o.id ORDER BY o.started_on, o.id`;
}

/** Plants that stood in one container for so many days, and what then became of them. */
export const potLife = z.strictObject({
  containerId: z.string(),
  containerName: z.string(),
  days: z.number(),
  died: z.boolean(),
  units: z.number(),
});
export type PotLife = z.infer<typeof potLife>;

/**
 * Days in the pot, from the day on which that is recorded: until plants were written off, or until they left alive or were last seen there. What a count
 * missed left unseen, and is not known to have died; what was discarded lived until somebody threw it away. Plants that change their container leave it alive; those that are only split off or merged in the
 * same container live on under another label. Lots whose day in the pot is assumed are left out, and so is the ground.
 */
export async function readPotLives({ tx, nurseryId, today }: ReadContext, plantId: string): Promise<PotLife[]> {
  return tx.rows(potLife)`
    WITH pots AS MATERIALIZED (
      SELECT l.id, l.container_id, c.name, l.container_on FROM lot_told l JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id AND c.kind <> 'ground'
       WHERE l.nursery_id = ${nurseryId}::uuid AND l.plant_id = ${plantId}::uuid AND l.container_on IS NOT NULL AND l.container_standing = 'recorded'),
    held AS MATERIALIZED (SELECT a.id, a.units, p.id AS lot_id, p.container_id, p.name, p.container_on FROM pots p JOIN account_told a ON a.nursery_id = ${nurseryId}::uuid AND a.lot_id = p.id),
    ends AS (
      SELECT h.container_id, h.name, greatest(0, e.happened_on - h.container_on) AS days, t.outside IS NOT DISTINCT FROM 'lost' AND e.cause IS DISTINCT FROM 'discarded' AS died, m.from_units AS units
        FROM held h JOIN movement_told m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = h.id JOIN account_told t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
        JOIN entry_told e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind <> 'reverse'
        LEFT JOIN lot_named n ON n.nursery_id = t.nursery_id AND n.id = t.lot_id
       WHERE t.lot_id IS DISTINCT FROM h.lot_id AND NOT (e.kind IN ('split', 'merge') AND n.container_id = h.container_id)
         AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
      UNION ALL
      SELECT container_id, name, greatest(0, ${today}::date - container_on), false, units FROM held WHERE units > 0)
    SELECT container_id::text AS "containerId", name AS "containerName", days, died, sum(units)::int AS units FROM ends WHERE units > 0
     GROUP BY container_id, name, days, died ORDER BY name, container_id, days`;
}
