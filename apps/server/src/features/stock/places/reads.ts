import { stock } from '@rootclock/contracts';
import { BATCH_UNITS, EVERYONE } from '@rootclock/domain';
import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import { query, type ReadContext } from '../../../trpc/operation.ts';
import { PLACE_FIELDS } from './store.ts';
import { placeFlat, placeTree, type PlaceRow } from './tree.ts';

async function readTree({ tx, nurseryId, now }: ReadContext, retired: boolean): Promise<PlaceRow[]> {
  const places = await tx.rows(placeFlat)`
    WITH standing AS (
      SELECT a.place_id, count(DISTINCT a.lot_id)::int AS lots, count(DISTINCT a.batch_id)::int AS batches, coalesce(sum(a.units) FILTER (WHERE a.lot_id IS NOT NULL), 0)::int AS units
        FROM account a WHERE a.nursery_id = ${nurseryId}::uuid AND a.kind = 'place' AND a.units > 0 GROUP BY a.place_id)
    SELECT p.id::text AS "placeId", p.edition, ${PLACE_FIELDS}, p.retired_at IS NOT NULL AS retired,
           to_char(p.closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "closedUntilAt", p.closed_reason AS "closedReason",
           coalesce(s.lots, 0) AS lots, coalesce(s.units, 0) AS units, coalesce(s.batches, 0) AS batches
      FROM place p LEFT JOIN standing s ON s.place_id = p.id
     WHERE p.nursery_id = ${nurseryId}::uuid AND (${retired} OR p.retired_at IS NULL)`;
  return placeTree(places, now);
}

/** All places as a tree, from top to bottom; a nursery has some dozens of them. */
export const listPlaces = query({
  name: 'listPlaces',
  input: stock.listPlaces,
  roles: EVERYONE,
  read: (context, { retired }): Promise<PlaceRow[]> => readTree(context, retired),
});

export const placeBatch = z.strictObject({
  batchId: z.string(),
  code: z.string(),
  scientificName: z.string(),
  unit: z.enum(BATCH_UNITS),
  units: z.number(),
  placeCode: z.string(),
  startedOn: z.string(),
  plantByOn: z.nullable(z.string()),
});
export type PlaceBatch = z.infer<typeof placeBatch>;
export const placeEvent = z.strictObject({
  entryId: z.string(),
  kind: z.enum(['closed', 'opened', 'treated']),
  happenedOn: z.string(),
  recordedAt: z.string(),
  person: z.nullable(z.string()),
  placeCode: z.string(),
  note: z.string(),
  product: z.nullable(z.string()),
  untilAt: z.nullable(z.string()),
  reversed: z.boolean(),
});
export type PlaceEvent = z.infer<typeof placeEvent>;

export interface PlaceStory extends PlaceRow {
  /** The places in which it lies, the outermost first. */
  path: { placeId: string; code: string }[];
  /** Places directly in it. */
  children: PlaceRow[];
  /** Batches at it and in all that lies in it. */
  batchRows: PlaceBatch[];
  /** Closings, openings and treatments of it and of the places in which it lies. */
  events: PlaceEvent[];
}

const MOST = 200;

/** A place and what stands there. Its lots come from `listLots` with the place, since there can be many. */
export const readPlace = query({
  name: 'readPlace',
  input: stock.readPlace,
  roles: EVERYONE,
  read: async (context, { placeId }): Promise<PlaceStory> => {
    const tree = await readTree(context, true);
    const byId = new Map(tree.map((row) => [row.placeId, row]));
    const place = found(byId.get(placeId), 'place', 'placeId');
    const path: PlaceRow[] = [];
    for (let above = byId.get(place.parentId ?? ''); above; above = byId.get(above.parentId ?? '')) path.unshift(above);
    const at = tree.indexOf(place);
    const after = tree.findIndex((row, index) => index > at && row.depth <= place.depth);
    const inside = tree.slice(at, after === -1 ? undefined : after);
    return {
      ...place,
      path: path.map((row) => ({ placeId: row.placeId, code: row.code })),
      children: inside.filter((row) => row.parentId === placeId),
      batchRows: await readBatchesAt(
        context,
        inside.map((row) => row.placeId),
      ),
      events: await readEvents(
        context,
        [...path, place].map((row) => row.placeId),
      ),
    };
  },
});

async function readBatchesAt({ tx, nurseryId }: ReadContext, placeIds: readonly string[]): Promise<PlaceBatch[]> {
  return tx.rows(placeBatch)`
    SELECT b.id::text AS "batchId", b.code, p.scientific_name AS "scientificName", b.unit, a.units, w.code AS "placeCode", b.started_on::text AS "startedOn", b.plant_by_on::text AS "plantByOn"
      FROM account a JOIN batch b ON b.nursery_id = a.nursery_id AND b.id = a.batch_id
                     JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id
                     JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
     WHERE a.nursery_id = ${nurseryId}::uuid AND a.place_id = ANY (${[...placeIds]}::uuid[]) AND a.units > 0
     ORDER BY b.plant_by_on NULLS LAST, b.code LIMIT ${MOST}`;
}

async function readEvents({ tx, nurseryId }: ReadContext, placeIds: readonly string[]): Promise<PlaceEvent[]> {
  return tx.rows(placeEvent)`
    SELECT e.id::text AS "entryId", CASE WHEN e.kind = 'treat' THEN 'treated' ELSE e.details ->> 'place' END AS kind, e.happened_on::text AS "happenedOn",
           to_char(e.recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "recordedAt", who.name AS person, w.code AS "placeCode", e.note, t.product,
           coalesce(to_char(t.reentry_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'), e.details ->> 'untilAt') AS "untilAt",
           EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS reversed
      FROM entry_subject s
      JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
      JOIN place w ON w.nursery_id = s.nursery_id AND w.id = s.subject_id
      LEFT JOIN treatment t ON t.nursery_id = e.nursery_id AND t.entry_id = e.id
      LEFT JOIN nursery_people() who ON who.person_id = e.person_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_kind = 'place' AND s.subject_id = ANY (${[...placeIds]}::uuid[])
       AND (e.kind = 'treat' OR e.details ? 'place')
     ORDER BY e.happened_on DESC, e.version DESC LIMIT ${MOST}`;
}
