import * as z from 'zod/mini';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export interface SpringCountRow {
  id: string;
  lotId: string;
  placeId: string;
  upUnits: number;
  deadUnits: number;
  notUpUnits: number;
}

/** Adds what a spring count found under its entry, and says of the lots that they were counted. */
export async function insertSpringCounts(
  { tx, nurseryId, touched }: CommandContext,
  entryId: string,
  countedOn: string,
  counts: readonly SpringCountRow[],
): Promise<void> {
  for (const { lotId } of counts) touched.lot(lotId);
  await tx.run`
    WITH counts AS (
      SELECT c.* FROM jsonb_to_recordset(${JSON.stringify(counts)}::jsonb) AS c (id uuid, "lotId" uuid, "placeId" uuid, "upUnits" int, "deadUnits" int, "notUpUnits" int)),
    counted AS (
      UPDATE lot l SET count_kind = 'counted' FROM (SELECT DISTINCT "lotId" FROM counts) c WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = c."lotId" AND l.count_kind <> 'counted')
    INSERT INTO spring_count (nursery_id, id, entry_id, lot_id, place_id, counted_on, up_units, dead_units, not_up_units)
    SELECT ${nurseryId}::uuid, c.id, ${entryId}::uuid, c."lotId", c."placeId", ${countedOn}::date, c."upUnits", c."deadUnits", c."notUpUnits" FROM counts c`;
}

const countedLot = z.strictObject({ lotId: z.string() });

/** Lots of an entry that were counted again since, by an entry that stands. */
export async function findCountedSince(
  { tx, nurseryId }: ReadContext,
  lotIds: readonly string[],
  version: number,
): Promise<Set<string>> {
  const rows = await tx.rows(countedLot)`
    SELECT DISTINCT s.subject_id::text AS "lotId" FROM entry_subject s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_id = ANY (${[...lotIds]}::uuid[]) AND e.kind = 'count' AND e.version > ${version}
       AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)`;
  return new Set(rows.map((row) => row.lotId));
}
