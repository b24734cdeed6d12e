import { PLACE_KINDS } from '@rootclock/domain';
import * as z from 'zod/mini';
import { columns, editedRow, raised } from '../../../db/editions.ts';
import { sql } from '../../../db/sql.ts';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

export const placeFields = z.strictObject({
  code: z.string(),
  name: z.string(),
  kind: z.enum(PLACE_KINDS),
  parentId: z.nullable(z.string()),
  winterCover: z.boolean(),
  /** Square metres plants can stand on; null where nobody measured them. */
  benchAreaM2: z.nullable(z.number()),
  /** Days of every year on which the place is covered, baited against voles and uncovered. */
  coverMd: z.nullable(z.string()),
  baitMd: z.nullable(z.string()),
  uncoverMd: z.nullable(z.string()),
});
export type PlaceFields = z.infer<typeof placeFields>;

/** These fields of a row of `place`, the only row of its statement that has columns of these names. */
export const PLACE_FIELDS = sql`
  code, name, kind, parent_id::text AS "parentId", winter_cover AS "winterCover", bench_area_m2::float8 AS "benchAreaM2",
  cover_md AS "coverMd", bait_md AS "baitMd", uncover_md AS "uncoverMd"`;

export const placeState = z.strictObject({
  ...placeFields.shape,
  id: z.string(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
  retired: z.boolean(),
});
export type PlaceState = z.infer<typeof placeState>;

export async function loadPlace({ tx, nurseryId }: ReadContext, id: string, field = 'placeId'): Promise<PlaceState> {
  const row = await tx.row(placeState)`
    SELECT id::text, ${PLACE_FIELDS}, closed_reason AS "closedReason",
           to_char(closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "closedUntilAt", retired_at IS NOT NULL AS retired
      FROM place WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(row, 'place', field);
}

const placeOfCode = z.strictObject({ id: z.string() });

/** Whether another place has this code; codes differ by more than their case, since people shout them across a yard. */
export async function isCodeTaken({ tx, nurseryId }: ReadContext, code: string, byOtherThan: string): Promise<boolean> {
  const rows = await tx.rows(placeOfCode)`
    SELECT id::text FROM place WHERE nursery_id = ${nurseryId}::uuid AND lower(code) = lower(${code}) AND id <> ${byOtherThan}::uuid LIMIT 1`;
  return rows.length > 0;
}

/** The place and all in which it lies, itself first. */
export async function loadLineage({ tx, nurseryId }: ReadContext, id: string): Promise<string[]> {
  const rows = await tx.rows(placeOfCode)`
    WITH RECURSIVE above AS (
      SELECT id, parent_id FROM place WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid
      UNION SELECT p.id, p.parent_id FROM place p JOIN above a ON p.id = a.parent_id WHERE p.nursery_id = ${nurseryId}::uuid)
    SELECT id::text FROM above`;
  return rows.map((row) => row.id);
}

export async function insertPlace(context: CommandContext, id: string, place: PlaceFields): Promise<void> {
  context.touched.features.add('stock');
  await context.tx.run`
    INSERT INTO place (nursery_id, id, parent_id, code, name, kind, winter_cover, bench_area_m2, cover_md, bait_md, uncover_md)
    VALUES (${context.nurseryId}::uuid, ${id}::uuid, ${place.parentId}::uuid, ${place.code}, ${place.name}, ${place.kind}, ${place.winterCover},
            ${place.benchAreaM2}::float8, ${place.coverMd}, ${place.baitMd}, ${place.uncoverMd})`;
}

export async function updatePlace(context: CommandContext, id: string, place: PlaceFields): Promise<void> {
  context.touched.features.add('stock');
  await context.tx.run`
    UPDATE place SET code = ${place.code}, name = ${place.name}, kind = ${place.kind}, parent_id = ${place.parentId}::uuid, winter_cover = ${place.winterCover},
           bench_area_m2 = ${place.benchAreaM2}::float8, cover_md = ${place.coverMd}, bait_md = ${place.baitMd}, uncover_md = ${place.uncoverMd}
     WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function setPlaceRetired(context: CommandContext, id: string, retiredAt: Date | null): Promise<void> {
  context.touched.features.add('stock');
  await context.tx
    .run`UPDATE place SET retired_at = ${retiredAt} WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}

export async function setPlaceClosed(
  context: CommandContext,
  id: string,
  untilAt: Date | null,
  reason: string | null,
): Promise<void> {
  context.touched.features.add('stock');
  await context.tx.run`
    UPDATE place SET closed_until_at = ${untilAt}, closed_reason = ${reason}, ${raised(context)}
     WHERE nursery_id = ${context.nurseryId}::uuid AND id = ${id}::uuid`;
}

export const standing = z.strictObject({
  lotIds: z.array(z.string()),
  batchIds: z.array(z.string()),
  units: z.number(),
  /** Of these, plants that grow in the ground itself. */
  groundUnits: z.number(),
  /** Places in it that are still in use. */
  places: z.number(),
});
export type Standing = z.infer<typeof standing>;

/** What stands at the place itself, and how many places lie directly in it. */
export async function loadStanding({ tx, nurseryId }: ReadContext, id: string): Promise<Standing> {
  const row = await tx.row(standing)`
    SELECT coalesce(array_agg(DISTINCT a.lot_id::text) FILTER (WHERE a.lot_id IS NOT NULL), '{}') AS "lotIds",
           coalesce(array_agg(DISTINCT a.batch_id::text) FILTER (WHERE a.batch_id IS NOT NULL), '{}') AS "batchIds",
           coalesce(sum(a.units), 0)::int AS units, coalesce(sum(a.units) FILTER (WHERE c.kind = 'ground'), 0)::int AS "groundUnits",
           (SELECT count(*)::int FROM place p WHERE p.nursery_id = ${nurseryId}::uuid AND p.parent_id = ${id}::uuid AND p.retired_at IS NULL) AS places
      FROM account a LEFT JOIN lot l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
                     LEFT JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
     WHERE a.nursery_id = ${nurseryId}::uuid AND a.place_id = ${id}::uuid AND a.units > 0`;
  return row ?? { lotIds: [], batchIds: [], units: 0, groundUnits: 0, places: 0 };
}

export const placeEdits = editedRow<{ placeId: string }>({
  table: 'place',
  row: ({ placeId }) => sql`r.id = ${placeId}::uuid`,
  fields: columns('code', 'name', 'kind', 'parentId', 'winterCover', 'benchAreaM2', 'coverMd', 'baitMd', 'uncoverMd'),
});

/** Opening a place takes away the closing that was read; another one that came meanwhile may keep people out of a treatment. */
export const closingEdits = editedRow<{ placeId: string }>({
  table: 'place',
  row: ({ placeId }) => sql`r.id = ${placeId}::uuid`,
  fields: { untilAt: `to_char(r.closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')` },
});
