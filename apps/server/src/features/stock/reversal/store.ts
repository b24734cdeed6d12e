import * as z from 'zod/mini';
import { raised } from '../../../db/editions.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import { reversedEntry, type ReversedEntry } from './undo.ts';

export const entryToReverse = z.strictObject({ ...reversedEntry.shape, reversed: z.boolean() });
export type EntryToReverse = z.infer<typeof entryToReverse>;

/** Loads an entry with whom it concerns, by its movements and its subjects; undefined when it is not this nursery's. */
export async function loadEntry({ tx, nurseryId }: ReadContext, entryId: string): Promise<EntryToReverse | undefined> {
  const row = await tx.row(entryToReverse)`
    SELECT e.id::text, e.kind, e.happened_on::text AS "happenedOn", e.version::int, e.cause, e.details, e.person_id::text AS "personId",
           EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS reversed,
           coalesce((SELECT jsonb_agg(DISTINCT jsonb_build_object('kind', s.kind, 'id', s.id)) FROM (
             SELECT es.subject_kind AS kind, es.subject_id AS id FROM entry_subject es WHERE es.nursery_id = e.nursery_id AND es.entry_id = e.id
             UNION SELECT h.kind, h.id FROM movement m
               JOIN account a ON a.nursery_id = m.nursery_id AND a.id IN (m.from_account_id, m.to_account_id)
               CROSS JOIN LATERAL (VALUES ('lot', a.lot_id), ('batch', a.batch_id), ('line', a.line_id)) AS h (kind, id)
              WHERE m.nursery_id = e.nursery_id AND m.entry_id = e.id AND h.id IS NOT NULL) s), '[]') AS subjects
      FROM entry e WHERE e.nursery_id = ${nurseryId}::uuid AND e.id = ${entryId}::uuid`;
  return row;
}

export const laterEntry = z.strictObject({
  entryId: z.string(),
  kind: z.string(),
  happenedOn: z.string(),
});
export type LaterEntry = z.infer<typeof laterEntry>;

const takenUnits = z.strictObject({ short: z.boolean(), later: z.array(laterEntry) });

/** Entries since, not taken back, that took units out of accounts which could not give back what the entry put there. */
export async function findWhatTookUnits(
  { tx, nurseryId }: ReadContext,
  { id, version }: { id: string; version: number },
): Promise<{ short: boolean; later: LaterEntry[] }> {
  const row = await tx.row(takenUnits)`
    WITH net AS (
      SELECT s.account_id, sum(s.units) AS units FROM (
        SELECT to_account_id AS account_id, to_units AS units FROM movement WHERE nursery_id = ${nurseryId}::uuid AND entry_id = ${id}::uuid
        UNION ALL SELECT from_account_id, -from_units FROM movement WHERE nursery_id = ${nurseryId}::uuid AND entry_id = ${id}::uuid) s
       GROUP BY s.account_id),
    short AS (
      SELECT a.id FROM net n JOIN account a ON a.nursery_id = ${nurseryId}::uuid AND a.id = n.account_id WHERE a.kind <> 'outside' AND a.units < n.units)
    SELECT EXISTS (SELECT 1 FROM short) AS short,
           coalesce((SELECT jsonb_agg(jsonb_build_object('entryId', l.id, 'kind', l.kind, 'happenedOn', l.happened_on) ORDER BY l.version DESC) FROM (
             SELECT DISTINCT e.id, e.kind, e.happened_on, e.version FROM short s
               JOIN movement m ON m.nursery_id = ${nurseryId}::uuid AND m.from_account_id = s.id
               JOIN entry e ON e.nursery_id = m.nursery_id AND e.id = m.entry_id
              WHERE e.version > ${version} AND e.kind <> 'reverse' AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
              ORDER BY e.version DESC LIMIT 20) l), '[]') AS later`;
  return row ?? { short: false, later: [] };
}

/** Later entries of a kind about the same things, not taken back. */
export async function findLaterOfKind(
  { tx, nurseryId }: ReadContext,
  { version, kind, subjects }: ReversedEntry,
): Promise<LaterEntry[]> {
  return tx.rows(laterEntry)`
    SELECT DISTINCT ON (e.version) e.id::text AS "entryId", e.kind, e.happened_on::text AS "happenedOn"
      FROM entry_subject s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_id = ANY (${subjects.map(({ id }) => id)}::uuid[]) AND e.kind = ${kind} AND e.version > ${version}
       AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
     ORDER BY e.version DESC LIMIT 20`;
}

/** Moves every unit of an entry back the way it came; all accounts exist already. */
export async function mirrorMovements(
  { tx, nurseryId }: CommandContext,
  { entryId, reversesId }: { entryId: string; reversesId: string },
): Promise<void> {
  await tx.run`
    INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
    SELECT nursery_id, ${entryId}::uuid, line, to_account_id, from_account_id, to_units, from_units
      FROM movement WHERE nursery_id = ${nurseryId}::uuid AND entry_id = ${reversesId}::uuid`;
}

const heldLot = z.strictObject({ lotId: z.string() });

/** Ends holds that an entry opened; what was released since stays as it was. */
export async function endHoldsOf(
  { tx, nurseryId, touched, today }: CommandContext,
  { entryId, reversesId }: { entryId: string; reversesId: string },
): Promise<void> {
  const rows = await tx.rows(heldLot)`
    UPDATE hold SET released_entry_id = ${entryId}::uuid, released_on = greatest(${today}::date, held_on), release_reason = ''
     WHERE nursery_id = ${nurseryId}::uuid AND entry_id = ${reversesId}::uuid AND released_on IS NULL RETURNING lot_id::text AS "lotId"`;
  for (const { lotId } of rows) touched.lot(lotId);
}

/** Opens again what an entry released, unless the hold itself was taken back or the lot is held anew for the same reason. */
export async function reopenHoldsOf({ tx, nurseryId, touched }: CommandContext, reversesId: string): Promise<void> {
  const rows = await tx.rows(heldLot)`
    UPDATE hold h SET released_entry_id = NULL, released_on = NULL, release_reason = NULL
     WHERE h.nursery_id = ${nurseryId}::uuid AND h.released_entry_id = ${reversesId}::uuid
       AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = h.nursery_id AND r.reverses_id = h.entry_id)
       AND NOT EXISTS (SELECT 1 FROM hold o WHERE o.nursery_id = h.nursery_id AND o.lot_id = h.lot_id AND o.reason = h.reason AND o.released_on IS NULL)
    RETURNING h.lot_id::text AS "lotId"`;
  for (const { lotId } of rows) touched.lot(lotId);
}

/** Opens places that are still closed until that very instant. */
export async function openPlacesClosedUntil(
  context: CommandContext,
  placeIds: readonly string[],
  untilAt: string,
): Promise<void> {
  const { tx, nurseryId, touched } = context;
  touched.features.add('stock');
  await tx.run`
    UPDATE place SET closed_until_at = NULL, closed_reason = NULL, ${raised(context)}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ANY (${[...placeIds]}::uuid[]) AND closed_until_at = ${untilAt}::timestamptz`;
}

const checkEntry = z.strictObject({
  kind: z.literal('observe'),
  details: z.record(z.string(), z.unknown()),
  reversed: z.boolean(),
});
type CheckEntry = z.infer<typeof checkEntry>;

/** Root-ball checks of a lot that were not taken back, the last one first, and what the very first one found the lot to be before. */
export async function loadChecks({ tx, nurseryId }: ReadContext, lotId: string): Promise<CheckEntry[]> {
  return tx.rows(checkEntry)`
    SELECT e.kind, e.details, EXISTS (SELECT 1 FROM entry r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id) AS reversed
      FROM entry_subject s JOIN entry e ON e.nursery_id = s.nursery_id AND e.id = s.entry_id
     WHERE s.nursery_id = ${nurseryId}::uuid AND s.subject_id = ${lotId}::uuid AND e.kind = 'observe' AND e.cause = 'root-ball'
     ORDER BY e.version DESC`;
}

const arrivalRow = z.strictObject({ on: z.string() });

/** Since when a lot that came into the nursery stood as it came; null for one that was made here. Before there was such a day its checks kept none. */
export async function loadArrival({ tx, nurseryId }: ReadContext, lotId: string): Promise<string | null> {
  const row = await tx.row(arrivalRow)`
    SELECT l.potted_on::text AS on FROM intake i JOIN lot l ON l.nursery_id = i.nursery_id AND l.id = i.lot_id
     WHERE i.nursery_id = ${nurseryId}::uuid AND i.lot_id = ${lotId}::uuid`;
  return row?.on ?? null;
}
