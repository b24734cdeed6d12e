import type { LedgerDay } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql } from '../../../db/sql.ts';
import type { ReadContext } from '../../../trpc/operation.ts';

export const winterSettings = z.strictObject({
  priorWeight: z.number(),
  evidenceLimit: z.number(),
  /** The share of plants that live through a winter where the nursery has not counted any. */
  winterSurvival: z.number(),
  freezeMd: z.string(),
  /** The day on which the year's first planting window opens; null where none does before July. */
  firstOpensMd: z.nullable(z.string()),
});
export type WinterSettings = z.infer<typeof winterSettings>;

export async function readWinterSettings({ tx, nurseryId }: ReadContext): Promise<WinterSettings> {
  const row = await tx.row(winterSettings)`
    SELECT n.prior_weight AS "priorWeight", n.evidence_limit AS "evidenceLimit", n.winter_survival::float8 AS "winterSurvival", n.freeze_md AS "freezeMd",
           (SELECT min(w.opens_md) FROM window_named w WHERE w.nursery_id = n.id AND w.retired_at IS NULL AND w.opens_md < '07-01') AS "firstOpensMd"
      FROM nursery_settings n WHERE n.id = ${nurseryId}::uuid`;
  return row ?? { priorWeight: 20, evidenceLimit: 400, winterSurvival: 0.9, freezeMd: '11-15', firstOpensMd: null };
}

export const notUpRow = z.strictObject({
  lotId: z.string(),
  code: z.string(),
  plantId: z.string(),
  scientificName: z.string(),
  lastEmergenceMd: z.nullable(z.string()),
  placeId: z.string(),
  placeCode: z.string(),
  countedOn: z.string(),
  /** Plants that the last count found not yet up, and no more than still stand. */
  notUpUnits: z.number(),
  standingUnits: z.number(),
});
export type NotUpRow = z.infer<typeof notUpRow>;

/** Lots whose last spring count, of entries that stand, still had plants that were not up, where these may still stand. */
export async function readNotUp(
  { tx, nurseryId }: ReadContext,
  placeIds: readonly string[] | null,
): Promise<NotUpRow[]> {
  const where = placeIds === null ? sql`true` : sql`a.place_id = ANY (${[...placeIds]}::uuid[])`;
  return tx.rows(notUpRow)`
    WITH standing AS (
      SELECT c.*, e.version FROM spring_count c JOIN entry e ON e.nursery_id = c.nursery_id AND e.id = c.entry_id
       WHERE c.nursery_id = ${nurseryId}::uuid AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = c.nursery_id AND r.reverses_id = c.entry_id)),
    last AS (SELECT DISTINCT ON (lot_id, place_id) * FROM standing ORDER BY lot_id, place_id, counted_on DESC, version DESC)
    SELECT l.id::text AS "lotId", l.code, p.id::text AS "plantId", p.scientific_name AS "scientificName", p.last_emergence_md AS "lastEmergenceMd", w.id::text AS "placeId", w.code AS "placeCode",
           s.counted_on::text AS "countedOn", least(s.not_up_units, a.units) AS "notUpUnits", a.units AS "standingUnits"
      FROM last s
      JOIN lot l ON l.nursery_id = ${nurseryId}::uuid AND l.id = s.lot_id
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN LATERAL (
        -- Plants that were carried elsewhere since, and not counted there, are asked about where they stand now.
        SELECT o.place_id, o.units FROM account o
         WHERE o.nursery_id = l.nursery_id AND o.lot_id = l.id AND o.kind = 'place' AND o.units > 0
           AND (o.place_id = s.place_id
             OR (NOT EXISTS (SELECT 1 FROM account h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.kind = 'place' AND h.place_id = s.place_id AND h.units > 0)
                 AND NOT EXISTS (SELECT 1 FROM standing t WHERE t.lot_id = s.lot_id AND (t.counted_on, t.version) > (s.counted_on, s.version))))
         ORDER BY o.units DESC LIMIT 1) a ON true
      JOIN place w ON w.nursery_id = l.nursery_id AND w.id = a.place_id
     WHERE s.not_up_units > 0 AND ${where}
     ORDER BY w.code, l.code`;
}

export const winterCount = z.strictObject({
  plantId: z.string(),
  /** Plants of which it is known whether they lived through winter. */
  stood: z.number(),
  lived: z.number(),
  lots: z.number(),
});
export type WinterCount = z.infer<typeof winterCount>;

/**
 * How many plants lived through winter, by plant, from the spring counts that stand. Of a lot at a place in one year what the first count found is what
 * stood, with what had been written off to winter since July; the dead of all its counts died, what the last one still found not up is not known yet.
 */
export async function readWinterCounts(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[],
): Promise<WinterCount[]> {
  return tx.rows(winterCount)`
    WITH counts AS (
      SELECT c.lot_id, c.place_id, l.plant_id, extract(year FROM c.counted_on)::int AS year, c.counted_on, e.version, c.dead_units, c.not_up_units,
             c.up_units + c.dead_units + c.not_up_units AS stood
        FROM spring_count c JOIN lot l ON l.nursery_id = c.nursery_id AND l.id = c.lot_id JOIN entry e ON e.nursery_id = c.nursery_id AND e.id = c.entry_id
       WHERE c.nursery_id = ${nurseryId}::uuid AND l.plant_id = ANY (${[...plantIds]}::uuid[])
         AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = c.nursery_id AND r.reverses_id = c.entry_id)),
    springs AS (
      SELECT plant_id, lot_id, year, (array_agg(stood ORDER BY counted_on, version))[1] AS stood, sum(dead_units) AS dead,
             (array_agg(not_up_units ORDER BY counted_on DESC, version DESC))[1] AS open
        FROM counts GROUP BY plant_id, lot_id, place_id, year),
    written AS (
      SELECT a.lot_id, extract(year FROM e.happened_on + interval '6 months')::int AS year, sum(m.from_units) AS units
        FROM (SELECT DISTINCT lot_id FROM counts) c JOIN account a ON a.nursery_id = ${nurseryId}::uuid AND a.lot_id = c.lot_id
        JOIN movement m ON m.nursery_id = a.nursery_id AND m.from_account_id = a.id
        JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id AND t.outside = 'lost'
        JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id AND e.kind = 'lose' AND e.cause = 'winter'
       WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
       GROUP BY a.lot_id, 2),
    lots AS (
      SELECT s.plant_id, s.lot_id, s.year, greatest(0, sum(s.stood - s.open)) AS stood, sum(s.dead) AS dead, coalesce(max(w.units), 0) AS written
        FROM springs s LEFT JOIN written w ON w.lot_id = s.lot_id AND w.year = s.year GROUP BY s.plant_id, s.lot_id, s.year)
    SELECT plant_id::text AS "plantId", sum(stood + written)::int AS stood, sum(greatest(0, stood - dead))::int AS lived, count(DISTINCT lot_id)::int AS lots
      FROM lots WHERE stood + written > 0 GROUP BY plant_id`;
}

const ledgerDay = z.strictObject({
  on: z.string(),
  units: z.number(),
  lost: z.number(),
  lostToWinter: z.number(),
  plantId: z.string(),
});

/**
 * What the ledger did to plants in pots and trays, by plant and day, from the entries that stand; plants set aside for orders are still in
 * their pots. Plants that were discarded left alive.
 */
export async function readLedgerDays(
  { tx, nurseryId }: ReadContext,
  plantIds: readonly string[] | 'all',
): Promise<(LedgerDay & { plantId: string })[]> {
  const which = plantIds === 'all' ? sql`true` : sql`l.plant_id = ANY (${[...plantIds]}::uuid[])`;
  return tx.rows(ledgerDay)`
    WITH void AS MATERIALIZED (SELECT unnest(ARRAY[id, reverses_id]) AS id FROM entry WHERE nursery_id = ${nurseryId}::uuid AND reverses_id IS NOT NULL),
    held AS MATERIALIZED (
      SELECT a.id, a.lot_id, l.plant_id FROM lot l JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id AND c.kind <> 'ground'
        JOIN account a ON a.nursery_id = l.nursery_id AND a.lot_id = l.id
       WHERE l.nursery_id = ${nurseryId}::uuid AND ${which}),
    moved AS (
      SELECT h.plant_id, m.entry_id, m.to_units AS units, 0 AS lost, CASE WHEN f.outside = 'found' THEN m.to_units ELSE 0 END AS found
        FROM held h JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.to_account_id = h.id JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
       WHERE f.lot_id IS DISTINCT FROM h.lot_id
      UNION ALL
      SELECT h.plant_id, m.entry_id, -m.from_units, CASE t.outside WHEN 'lost' THEN m.from_units ELSE 0 END, CASE t.outside WHEN 'unexplained' THEN -m.from_units ELSE 0 END
        FROM held h JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = h.id JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
       WHERE t.lot_id IS DISTINCT FROM h.lot_id)
    SELECT m.plant_id::text AS "plantId", e.happened_on::text AS on, sum(m.units)::int AS units,
           sum(CASE WHEN e.cause IN ('winter', 'discarded') THEN 0 ELSE m.lost END - m.found)::int AS lost, sum(CASE WHEN e.cause = 'winter' THEN m.lost ELSE 0 END)::int AS "lostToWinter"
      FROM moved m JOIN entry e ON e.nursery_id = ${nurseryId}::uuid AND e.id = m.entry_id
     WHERE NOT EXISTS (SELECT 1 FROM void x WHERE x.id = m.entry_id)
     GROUP BY m.plant_id, e.happened_on ORDER BY m.plant_id, e.happened_on`;
}

export const springSheetRow = z.strictObject({
  lotId: z.string(),
  code: z.string(),
  scientificName: z.string(),
  containerName: z.string(),
  placeId: z.string(),
  placeCode: z.string(),
  standing: z.number(),
  /** This year's last count that stands. */
  last: z.nullable(
    z.strictObject({ countedOn: z.string(), upUnits: z.number(), deadUnits: z.number(), notUpUnits: z.number() }),
  ),
});
export type SpringSheetRow = z.infer<typeof springSheetRow>;

/** As many as one count may hold. */
const MOST = 500;

/** What stands, lot by lot and place by place, with this year's last spring count of each. */
export async function readSpringRows(
  { tx, nurseryId, today }: ReadContext,
  { lotIds, placeIds }: { lotIds: readonly string[]; placeIds: readonly string[] | null },
): Promise<SpringSheetRow[]> {
  const where = placeIds === null ? sql`true` : sql`a.place_id = ANY (${[...placeIds]}::uuid[])`;
  return tx.rows(springSheetRow)`
    SELECT l.id::text AS "lotId", l.code, p.scientific_name AS "scientificName", c.name AS "containerName", w.id::text AS "placeId", w.code AS "placeCode", a.units AS standing,
           (SELECT jsonb_build_object('countedOn', s.counted_on, 'upUnits', s.up_units, 'deadUnits', s.dead_units, 'notUpUnits', s.not_up_units)
              FROM spring_count s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
             WHERE s.nursery_id = a.nursery_id AND s.lot_id = a.lot_id AND s.place_id = a.place_id AND s.counted_on >= date_trunc('year', ${today}::date)
               AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
             ORDER BY s.counted_on DESC, e.version DESC LIMIT 1) AS last
      FROM account a
      JOIN lot l ON l.nursery_id = a.nursery_id AND l.id = a.lot_id
      JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      JOIN place w ON w.nursery_id = a.nursery_id AND w.id = a.place_id
     WHERE a.nursery_id = ${nurseryId}::uuid AND a.lot_id = ANY (${[...lotIds]}::uuid[]) AND a.kind = 'place' AND a.units > 0 AND ${where}
     ORDER BY w.code, p.scientific_name, l.code LIMIT ${MOST}`;
}
