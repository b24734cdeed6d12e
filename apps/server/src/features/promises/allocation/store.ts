import * as z from 'zod/mini';
import { setInNursery } from '../../../db/nursery-row.ts';
import { sql } from '../../../db/sql.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import {
  type ScopeHeir,
  scopeHeir,
  type ScopeLine,
  scopeLine,
  type ScopeReservation,
  scopeReservation,
} from './scope.ts';

/** Where a plan begins: everything, or what is linked by items to these. */
export interface ScopeSeed {
  all?: boolean;
  lots?: readonly string[];
  batches?: readonly string[];
  lines?: readonly string[];
  items?: readonly { plantId: string; containerId: string }[];
  /** Whether treatments matter although no line of the scope asks about them yet. */
  asksTreatments?: boolean;
  /** Regions whose planting windows matter although no line of the scope lies there. */
  regions?: readonly string[];
}

const planNeed = z.strictObject({ needed: z.boolean() });

/**
 * Whether a command's lots and batches ask for a plan at all. One small statement, since many entries change no promise: it is asked for where
 * more is reserved than is there, where something reserved no longer serves, and where something gained that an open line could take.
 */
export async function needsPlan({ tx, nurseryId, today, touched }: CommandContext): Promise<boolean> {
  const row = await tx.row(planNeed)`
    SELECT promises_need_plan(${nurseryId}::uuid, ${[...touched.lots]}::uuid[], ${[...touched.batches]}::uuid[], ${[...touched.gaining]}::uuid[], ${today}::date) AS needed`;
  return row?.needed ?? false;
}

const openLineCount = z.strictObject({ lines: z.number() });

export async function countOpenLines({ tx, nurseryId }: ReadContext): Promise<number> {
  const row = await tx.row(openLineCount)`
    SELECT count(*)::int AS lines FROM order_named o JOIN line_asked l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
     WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open' AND l.withdrawn_on IS NULL`;
  return row?.lines ?? 0;
}

/** The open lines that share items with the seed, directly or through other lines' alternatives. */
export async function loadScopeLines({ tx, nurseryId }: ReadContext, seed: ScopeSeed): Promise<ScopeLine[]> {
  const lots = [...(seed.lots ?? [])];
  const batches = [...(seed.batches ?? [])];
  const lines = [...(seed.lines ?? [])];
  return tx.rows(scopeLine)`
    WITH RECURSIVE open_line AS MATERIALIZED (
      SELECT l.id, l.plant_id, l.container_id
        FROM order_named o JOIN line_asked l ON l.nursery_id = o.nursery_id AND l.order_id = o.id
       WHERE o.nursery_id = ${nurseryId}::uuid AND o.state = 'open' AND l.withdrawn_on IS NULL),
    accepts AS MATERIALIZED (
      SELECT id AS line_id, plant_id, container_id FROM open_line
      UNION ALL
      SELECT a.line_id, a.plant_id, a.container_id FROM alternative_told a JOIN open_line l ON l.id = a.line_id WHERE a.nursery_id = ${nurseryId}::uuid),
    seed_line AS (
      SELECT unnest(${lines}::uuid[]) AS id
      UNION SELECT r.line_id FROM reservation r WHERE r.nursery_id = ${nurseryId}::uuid AND r.lot_id = ANY (${lots}::uuid[])
      UNION SELECT r.line_id FROM reservation r WHERE r.nursery_id = ${nurseryId}::uuid AND r.batch_id = ANY (${batches}::uuid[])),
    seed AS (
      SELECT plant_id, container_id FROM lot_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${lots}::uuid[])
      UNION SELECT plant_id, target_container_id FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${batches}::uuid[])
      UNION SELECT a.plant_id, a.container_id FROM accepts a JOIN seed_line s ON s.id = a.line_id
      UNION SELECT x.plant_id, x.container_id FROM reservation r JOIN seed_line s ON s.id = r.line_id JOIN lot_named x ON x.nursery_id = r.nursery_id AND x.id = r.lot_id WHERE r.nursery_id = ${nurseryId}::uuid
      UNION SELECT x.plant_id, x.target_container_id FROM reservation r JOIN seed_line s ON s.id = r.line_id JOIN batch_named x ON x.nursery_id = r.nursery_id AND x.id = r.batch_id WHERE r.nursery_id = ${nurseryId}::uuid
      UNION SELECT i."plantId", i."containerId" FROM jsonb_to_recordset(${JSON.stringify(seed.items ?? [])}::jsonb) AS i ("plantId" uuid, "containerId" uuid)
      UNION SELECT a.plant_id, a.container_id FROM accepts a WHERE ${seed.all ?? false}),
    -- From items to the lines that accept them and on to all that these accept. Each line and each item is met once; going from item to item in one
    -- step would meet every pair of a line's items, which took longer than a command may from some hundreds of lines on.
    way AS MATERIALIZED (
      SELECT plant_id || '@' || container_id AS here, line_id::text AS there FROM accepts
      UNION ALL SELECT line_id::text, plant_id || '@' || container_id FROM accepts),
    reach AS (
      SELECT plant_id || '@' || container_id AS met FROM seed
      UNION SELECT w.there FROM reach r JOIN way w ON w.here = r.met),
    linked AS MATERIALIZED (SELECT l.id AS line_id FROM open_line l JOIN reach r ON r.met = l.id::text)
    SELECT v.id::text, v.order_id::text AS "orderId", v.order_code AS "orderCode", v.order_kind AS "orderKind", v.client_name AS "clientName", v.site_name AS "siteName", v.region,
           v.lead_days AS "leadDays", v.rank, v.due_on::text AS "dueOn", v.plant_id::text AS "plantId", v.scientific_name AS "scientificName", v.container_code AS "containerCode", v.cells,
           v.units, v.staged_units AS "stagedUnits", v.delivered_units AS "deliveredUnits", v.seed_zone AS "seedZone", v.wild_type AS "wildType", v.untreated,
           v.natives_only AS "nativesOnly", v.accepts, v.refused_ids AS "refusedIds"
      FROM linked k JOIN judged_line v ON v.nursery_id = ${nurseryId}::uuid AND v.id = k.line_id
     ORDER BY v.rank`;
}

/** What is stored for these lines and of these lots and batches, whether or not it may stay. */
export async function loadReservations(
  { tx, nurseryId }: ReadContext,
  lines: readonly string[],
  supplies: readonly string[],
  all = false,
): Promise<ScopeReservation[]> {
  return tx.rows(scopeReservation)`
    SELECT line_id::text AS "lineId", supply_id::text AS "supplyId", CASE WHEN lot_id IS NULL THEN 'batch' ELSE 'lot' END AS "supplyKind", units, pinned
      FROM reservation
     WHERE nursery_id = ${nurseryId}::uuid AND (${all} OR line_id = ANY (${[...lines]}::uuid[]) OR lot_id = ANY (${[...supplies]}::uuid[]) OR batch_id = ANY (${[...supplies]}::uuid[]))
     ORDER BY line_id, supply_id, pinned`;
}

/** What gave plants to another lot or batch in an entry, which has the id of its command. */
export async function loadHeirs({ tx, nurseryId }: ReadContext, entryId: string): Promise<ScopeHeir[]> {
  return tx.rows(scopeHeir)`
    SELECT h.from_id::text AS "fromId", h.to_id::text AS "toId" FROM (
      SELECT DISTINCT coalesce(f.lot_id, f.batch_id) AS from_id, coalesce(t.lot_id, t.batch_id) AS to_id
        FROM movement_told m
        JOIN account_told f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
        JOIN account_told t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
       WHERE m.nursery_id = ${nurseryId}::uuid AND m.entry_id = ${entryId}::uuid) h
      LEFT JOIN lot_named x ON x.nursery_id = ${nurseryId}::uuid AND x.id = h.to_id
     WHERE h.from_id <> h.to_id ORDER BY x.code, h.to_id, h.from_id`;
}

export async function saveReservations(
  { tx, nurseryId }: CommandContext,
  gone: readonly ScopeReservation[],
  kept: readonly ScopeReservation[],
): Promise<void> {
  if (gone.length > 0) {
    await tx.run`
      DELETE FROM reservation r USING jsonb_to_recordset(${JSON.stringify(gone)}::jsonb) AS g ("lineId" uuid, "supplyId" uuid, pinned boolean)
       WHERE r.nursery_id = ${nurseryId}::uuid AND r.line_id = g."lineId" AND r.supply_id = g."supplyId" AND r.pinned = g.pinned`;
  }
  if (kept.length > 0) {
    await tx.run`
      INSERT INTO reservation (nursery_id, line_id, supply_id, lot_id, batch_id, units, pinned)
      SELECT ${nurseryId}::uuid, k."lineId", k."supplyId", CASE WHEN k."supplyKind" = 'lot' THEN k."supplyId" END, CASE WHEN k."supplyKind" = 'batch' THEN k."supplyId" END, k.units, k.pinned
        FROM jsonb_to_recordset(${JSON.stringify(kept)}::jsonb) AS k ("lineId" uuid, "supplyId" uuid, "supplyKind" text, units int, pinned boolean)
      ON CONFLICT (nursery_id, line_id, supply_id, pinned) DO UPDATE SET units = excluded.units`;
  }
}

/** Lines may be promised more than they hold, or better: the plan was not solved after what happened. */
export async function notePlanStale(context: CommandContext): Promise<void> {
  await setInNursery(context, sql`plan_stale_since = coalesce(plan_stale_since, ${context.now})`);
}

/** Everything was planned anew. Answers whether it had been stale. */
export const notePlanWhole = (context: CommandContext): Promise<boolean> =>
  setInNursery(context, sql`plan_stale_since = NULL`, sql`plan_stale_since IS NOT NULL`);

const planStateRow = z.strictObject({ staleSince: z.nullable(z.string()) });

/** Since when the plan waits to be solved, as an instant; null where it is solved. */
export async function loadPlanState({ tx, nurseryId }: ReadContext): Promise<z.infer<typeof planStateRow>> {
  const row = await tx.row(planStateRow)`
    SELECT to_char(plan_stale_since AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS "staleSince" FROM nursery_settings WHERE id = ${nurseryId}::uuid`;
  return row ?? { staleSince: null };
}
