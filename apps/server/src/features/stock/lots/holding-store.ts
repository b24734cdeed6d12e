import type { HoldReason } from '@rootclock/domain';
import * as z from 'zod/mini';
import { sql, type Sql } from '../../../db/sql.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

const heldLot = z.strictObject({ lotId: z.string() });

/** Opens holds for lots that do not have them yet and answers which lots were held by this. Ids follow from entry, lot and reason. */
export async function openHolds(
  { tx, nurseryId, touched }: CommandContext,
  entryId: string,
  lotIds: readonly string[],
  reason: HoldReason,
  heldOn: string,
): Promise<string[]> {
  const rows = await tx.rows(heldLot)`
    INSERT INTO hold (nursery_id, id, lot_id, reason, entry_id, held_on)
    SELECT ${nurseryId}::uuid, md5(${entryId} || '/' || l || '/' || ${reason})::uuid, l::uuid, ${reason}, ${entryId}::uuid, ${heldOn}::date
      FROM unnest(${[...lotIds]}::text[]) AS l
    ON CONFLICT (nursery_id, lot_id, reason) WHERE released_on IS NULL DO NOTHING
    RETURNING lot_id::text AS "lotId"`;
  for (const { lotId } of rows) touched.lotOfOtherUse(lotId);
  return rows.map(({ lotId }) => lotId);
}

/**
 * Takes over holds down lineage, after the movements of an entry that gave plants to lots: what holds the parent holds the child. A batch
 * cannot be held, so plants potted from a treated batch of a host of larvae begin their own hold.
 */
export async function inheritHolds({ tx, nurseryId }: CommandContext, entryId: string): Promise<void> {
  await tx.run`
    WITH given AS (
      SELECT DISTINCT t.lot_id AS child, f.lot_id AS parent_lot, f.batch_id AS parent_batch
        FROM movement m
        JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
        JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
       WHERE m.nursery_id = ${nurseryId}::uuid AND m.entry_id = ${entryId}::uuid AND t.lot_id IS NOT NULL AND f.kind <> 'outside' AND f.lot_id IS DISTINCT FROM t.lot_id),
    inherited AS (
      SELECT g.child, h.reason, min(h.held_on) AS held_on
        FROM given g JOIN hold h ON h.nursery_id = ${nurseryId}::uuid AND h.lot_id = g.parent_lot AND h.released_on IS NULL
       GROUP BY g.child, h.reason
      UNION
      SELECT g.child, 'treated', min(h.happened_on)
        FROM given g
        JOIN batch b ON b.nursery_id = ${nurseryId}::uuid AND b.id = g.parent_batch
        JOIN plant_named p ON p.nursery_id = b.nursery_id AND p.id = b.plant_id AND p.larval_host
        CROSS JOIN LATERAL treatments_of(b.nursery_id, ARRAY[b.id]) h
       GROUP BY g.child)
    INSERT INTO hold (nursery_id, id, lot_id, reason, entry_id, held_on)
    SELECT ${nurseryId}::uuid, md5(${entryId} || '/' || i.child || '/' || i.reason)::uuid, i.child, i.reason, ${entryId}::uuid, i.held_on FROM inherited i
    ON CONFLICT (nursery_id, lot_id, reason) WHERE released_on IS NULL DO NOTHING`;
}

/** Ends the open hold of that reason; to be written beside the entry of the release. */
export const holdClosed = (
  { nurseryId, commandId }: CommandContext,
  {
    lotId,
    reason,
    releasedOn,
    releaseReason,
  }: { lotId: string; reason: HoldReason; releasedOn: string; releaseReason: string },
): Sql => sql`
  UPDATE hold SET released_entry_id = ${commandId}::uuid, released_on = ${releasedOn}::date, release_reason = ${releaseReason}
   WHERE nursery_id = ${nurseryId}::uuid AND lot_id = ${lotId}::uuid AND reason = ${reason} AND released_on IS NULL`;

const openHold = z.strictObject({ heldOn: z.string() });

/** Since when the open hold of that reason stands, or undefined when there is none. */
export async function openHoldSince(
  { tx, nurseryId }: ReadContext,
  lotId: string,
  reason: HoldReason,
): Promise<string | undefined> {
  const row = await tx.row(openHold)`
    SELECT held_on::text AS "heldOn" FROM hold
     WHERE nursery_id = ${nurseryId}::uuid AND lot_id = ${lotId}::uuid AND reason = ${reason} AND released_on IS NULL`;
  return row?.heldOn;
}
