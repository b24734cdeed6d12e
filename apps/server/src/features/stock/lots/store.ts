import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

/** What commands need to know of a lot before they touch it. */
export const lotFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  plantId: z.string(),
  plantCode: z.string(),
  scientificName: z.string(),
  genus: z.string(),
  larvalHost: z.boolean(),
  dormantMonths: z.array(z.number()),
  lastEmergenceMd: z.nullable(z.string()),
  sourceId: z.string(),
  containerId: z.string(),
  containerKind: z.string(),
  pottedOn: z.string(),
  pottedPrecision: z.string(),
  confinedOn: z.nullable(z.string()),
  confinedStanding: z.enum(['recorded', 'assumed']),
  containerOn: z.nullable(z.string()),
  containerStanding: z.enum(['recorded', 'assumed']),
  readyOn: z.nullable(z.string()),
  rootCheckedOn: z.nullable(z.string()),
  countKind: z.string(),
  note: z.string(),
  balances: z.array(z.strictObject({ placeId: z.string(), units: z.number(), placeCode: z.string() })),
  /** Some of it stands in a place for quarantine. */
  inQuarantine: z.boolean(),
  holds: z.array(z.string()),
  reserved: z.number(),
});
export type LotFacts = z.infer<typeof lotFacts>;

/** Loads lots by id in the order asked for; an id that is not this nursery's answers as not found. */
export async function loadLots(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
  field = 'lotId',
): Promise<LotFacts[]> {
  const rows = await tx.rows(lotFacts)`
    SELECT l.id::text, l.code, l.plant_id::text AS "plantId", p.code AS "plantCode", p.scientific_name AS "scientificName", p.genus,
           p.larval_host AS "larvalHost", p.dormant_months AS "dormantMonths", p.last_emergence_md AS "lastEmergenceMd", l.source_id::text AS "sourceId",
           l.container_id::text AS "containerId", c.kind AS "containerKind", l.potted_on::text AS "pottedOn", l.potted_precision AS "pottedPrecision",
           l.confined_on::text AS "confinedOn", l.confined_standing AS "confinedStanding", l.container_on::text AS "containerOn",
           l.container_standing AS "containerStanding", l.ready_on::text AS "readyOn", l.root_checked_on::text AS "rootCheckedOn",
           l.count_kind AS "countKind", l.note,
           coalesce((SELECT jsonb_agg(jsonb_build_object('placeId', a.place_id, 'placeCode', w.code, 'units', a.units) ORDER BY w.code)
                       FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
                      WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0), '[]') AS balances,
           EXISTS (SELECT 1 FROM account a JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id AND w.kind = 'quarantine'
                    WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place' AND a.units > 0) AS "inQuarantine",
           coalesce((SELECT array_agg(h.reason ORDER BY h.reason) FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL), '{}') AS holds,
           coalesce((SELECT sum(r.units)::int FROM units_reserved r WHERE r.nursery_id = l.nursery_id AND r.lot_id = l.id), 0) AS reserved
      FROM lot l JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
                 JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ANY (${[...ids]}::uuid[])`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.map((id) => found(byId.get(id), 'lot', field));
}

export async function loadLot(context: ReadContext, id: string, field = 'lotId'): Promise<LotFacts> {
  const [lot] = await loadLots(context, [id], field);
  return found(lot, 'lot', field);
}

export interface NewLot {
  id: string;
  code: string;
  plantId: string;
  sourceId: string;
  containerId: string;
  pottedOn: string;
  pottedPrecision?: string;
  confinedOn: string | null;
  confinedStanding?: 'recorded' | 'assumed';
  containerOn: string | null;
  containerStanding?: 'recorded' | 'assumed';
  readyOn?: string | null;
  rootCheckedOn?: string | null;
  countKind?: string;
  note?: string;
}

/** Adds lots under an entry that already stands. */
export async function insertLots(context: CommandContext, entryId: string, lots: readonly NewLot[]): Promise<void> {
  for (const lot of lots) context.touched.lot(lot.id);
  await context.tx.run`
    INSERT INTO lot (nursery_id, id, code, plant_id, source_id, container_id, created_entry_id, potted_on, potted_precision, confined_on, confined_standing,
                     container_on, container_standing, ready_on, root_checked_on, count_kind, note)
    SELECT ${context.nurseryId}::uuid, n.id, n.code, n."plantId", n."sourceId", n."containerId", ${entryId}::uuid, n."pottedOn", coalesce(n."pottedPrecision", 'day'),
           n."confinedOn", coalesce(n."confinedStanding", 'recorded'), n."containerOn", coalesce(n."containerStanding", 'recorded'), n."readyOn",
           n."rootCheckedOn", coalesce(n."countKind", 'counted'), coalesce(n.note, '')
      FROM jsonb_to_recordset(${JSON.stringify(lots)}::jsonb) AS n (id uuid, code text, "plantId" uuid, "sourceId" uuid, "containerId" uuid, "pottedOn" date,
           "pottedPrecision" text, "confinedOn" date, "confinedStanding" text, "containerOn" date, "containerStanding" text, "readyOn" date,
           "rootCheckedOn" date, "countKind" text, note text)`;
}

export const placeFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  kind: z.string(),
  closedUntilAt: z.nullable(z.string()),
  closedReason: z.nullable(z.string()),
  retired: z.boolean(),
});
export type PlaceFacts = z.infer<typeof placeFacts>;

/**
 * Loads places by id in the order asked for; an id that is not this nursery's answers as not found. A place is closed as long as it or
 * any place it lies in: nobody reaches a bench of a closed house.
 */
export async function loadPlaces(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
  field = 'placeId',
): Promise<PlaceFacts[]> {
  const rows = await tx.rows(placeFacts)`
    WITH RECURSIVE above (id, at) AS (
      SELECT w.id, w.id FROM place w WHERE w.nursery_id = ${nurseryId}::uuid AND w.id = ANY (${[...ids]}::uuid[])
      UNION SELECT a.id, w.parent_id FROM above a JOIN place w ON w.nursery_id = ${nurseryId}::uuid AND w.id = a.at WHERE w.parent_id IS NOT NULL)
    SELECT w.id::text, w.code, w.kind, to_char(c.closed_until_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "closedUntilAt", c.closed_reason AS "closedReason",
           w.retired_at IS NOT NULL AS retired
      FROM place w
      LEFT JOIN LATERAL (SELECT o.closed_until_at, o.closed_reason FROM above a JOIN place o ON o.nursery_id = ${nurseryId}::uuid AND o.id = a.at
                          WHERE a.id = w.id AND o.closed_until_at IS NOT NULL ORDER BY o.closed_until_at DESC LIMIT 1) c ON true
     WHERE w.nursery_id = ${nurseryId}::uuid AND w.id = ANY (${[...ids]}::uuid[])`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.map((id) => found(byId.get(id), 'place', field));
}

export const containerFacts = z.strictObject({
  id: z.string(),
  code: z.string(),
  kind: z.string(),
  cells: z.nullable(z.number()),
});
export type ContainerFacts = z.infer<typeof containerFacts>;

/** Loads containers by id in the order asked for; one that is retired or not this nursery's answers as not found. */
export async function loadContainers(
  { tx, nurseryId }: ReadContext,
  ids: readonly string[],
  field = 'containerId',
): Promise<ContainerFacts[]> {
  const rows = await tx.rows(containerFacts)`
    SELECT id::text, code, kind, cells FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...ids]}::uuid[]) AND retired_at IS NULL`;
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.map((id) => found(byId.get(id), 'container', field));
}

/** The nursery's ground: the first container that is no pot. */
export async function loadGround({ tx, nurseryId }: ReadContext): Promise<ContainerFacts | undefined> {
  const row = await tx.row(containerFacts)`
    SELECT id::text, code, kind, cells FROM container_named WHERE nursery_id = ${nurseryId}::uuid AND kind = 'ground' AND retired_at IS NULL ORDER BY code LIMIT 1`;
  return row;
}

export const standingAt = z.strictObject({
  placeIds: z.array(z.string()),
  lotIds: z.array(z.string()),
  batches: z.array(z.strictObject({ id: z.string(), code: z.string(), placeId: z.string(), units: z.number() })),
});
export type StandingAt = z.infer<typeof standingAt>;

/** What stands at a place and at the places within it. */
export async function loadStandingAt({ tx, nurseryId }: ReadContext, placeId: string): Promise<StandingAt> {
  const row = await tx.row(standingAt)`
    WITH RECURSIVE inside AS (
      SELECT w.id FROM place w WHERE w.nursery_id = ${nurseryId}::uuid AND w.id = ${placeId}::uuid
      UNION SELECT w.id FROM place w JOIN inside i ON w.parent_id = i.id WHERE w.nursery_id = ${nurseryId}::uuid),
    standing AS (
      SELECT a.lot_id, a.batch_id, a.place_id, a.units FROM account a JOIN inside i ON a.place_id = i.id WHERE a.nursery_id = ${nurseryId}::uuid AND a.units > 0)
    SELECT (SELECT array_agg(id::text) FROM inside) AS "placeIds",
           coalesce((SELECT array_agg(DISTINCT lot_id::text) FROM standing WHERE lot_id IS NOT NULL), '{}') AS "lotIds",
           coalesce((SELECT jsonb_agg(jsonb_build_object('id', s.batch_id, 'code', b.code, 'placeId', s.place_id, 'units', s.units) ORDER BY b.code, s.place_id)
                       FROM standing s JOIN batch b ON b.nursery_id = ${nurseryId}::uuid AND b.id = s.batch_id), '[]') AS batches`;
  return row ?? { placeIds: [placeId], lotIds: [], batches: [] };
}
