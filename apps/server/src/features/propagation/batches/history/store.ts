import { ENTRY_KINDS, type BatchEntry } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';

/** A forecast as an entry keeps it; those from before there was a usual yield have none. */
const writtenForecast = z.strictObject({
  targetContainerId: z.nullable(z.string()),
  cautiousUnits: z.number(),
  usualUnits: z.optional(z.number()),
  readyOn: z.nullable(z.string()),
});

const storedEntry = z.strictObject({
  entryId: z.string(),
  version: z.number(),
  kind: z.enum(ENTRY_KINDS),
  cause: z.nullable(z.string()),
  unitsOut: z.number(),
  unitsIn: z.number(),
  forecast: z.nullable(writtenForecast),
  firstAlive: z.nullable(z.strictObject({ on: z.string(), assumed: z.boolean() })),
  isSecondWinter: z.boolean(),
  starts: z.boolean(),
  happenedOn: z.string(),
  stagePosition: z.nullable(z.number()),
  emergedUnits: z.nullable(z.number()),
  pottedPlants: z.number(),
});

/**
 * The entries of a batch that stand, in the order they were written down. Entries that were reversed, and reversals, are left out.
 * An entry that draws packs says of stages and yields what holds for the batch it made, and nothing of the packs it drew on.
 */
export async function loadBatchEntries({ tx, nurseryId }: ReadContext, batchId: string): Promise<BatchEntry[]> {
  return tx.rows(storedEntry)`
    WITH own AS (SELECT id, batch_id FROM account_told WHERE nursery_id = ${nurseryId}::uuid AND batch_id = ${batchId}::uuid),
    moved AS (
      SELECT m.entry_id,
             sum(CASE WHEN NOT m.within THEN m.out_units ELSE 0 END)::int AS units_out,
             sum(CASE WHEN NOT m.within THEN m.in_units ELSE 0 END)::int AS units_in,
             sum(CASE WHEN m.to_lot THEN m.to_units ELSE 0 END)::int AS potted
        FROM (SELECT v.entry_id, v.from_units AS out_units, 0 AS in_units, v.to_units, t.lot_id IS NOT NULL AS to_lot, t.batch_id IS NOT DISTINCT FROM f.batch_id AS within
                FROM movement_told v JOIN own f ON f.id = v.from_account_id JOIN account_told t ON t.nursery_id = v.nursery_id AND t.id = v.to_account_id
               WHERE v.nursery_id = ${nurseryId}::uuid
              UNION ALL
              SELECT v.entry_id, 0, v.to_units, 0, false, f.batch_id IS NOT DISTINCT FROM t.batch_id
                FROM movement_told v JOIN own t ON t.id = v.to_account_id JOIN account_told f ON f.nursery_id = v.nursery_id AND f.id = v.from_account_id
               WHERE v.nursery_id = ${nurseryId}::uuid) m
       GROUP BY m.entry_id),
    involved AS (
      SELECT entry_id FROM moved
      UNION SELECT entry_id FROM entry_about WHERE nursery_id = ${nurseryId}::uuid AND subject_id = ${batchId}::uuid)
    SELECT e.id::text AS "entryId", e.version::int, e.id = b.created_entry_id AS starts, e.kind, e.happened_on::text AS "happenedOn", e.cause, coalesce(m.units_out, 0) AS "unitsOut",
           coalesce(m.units_in, 0) AS "unitsIn", coalesce(m.potted, 0) AS "pottedPlants", c.emerged_units AS "emergedUnits",
           CASE WHEN e.kind = 'convert' AND e.id <> b.created_entry_id THEN NULL ELSE e.details -> 'forecast' END AS forecast,
           CASE WHEN e.kind = 'convert' AND e.id <> b.created_entry_id THEN NULL ELSE (e.details -> 'stage' ->> 'position')::int END AS "stagePosition",
           e.details -> 'firstAlive' AS "firstAlive", coalesce((e.details ->> 'secondWinter')::boolean, false) AS "isSecondWinter"
      FROM involved i
      JOIN entry_told e ON e.nursery_id = ${nurseryId}::uuid AND e.id = i.entry_id
      JOIN batch_told b ON b.nursery_id = e.nursery_id AND b.id = ${batchId}::uuid
      LEFT JOIN moved m ON m.entry_id = i.entry_id
      LEFT JOIN batch_count c ON c.nursery_id = e.nursery_id AND c.entry_id = e.id AND c.batch_id = ${batchId}::uuid
     WHERE e.kind <> 'reverse' AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = e.nursery_id AND r.reverses_id = e.id)
     ORDER BY e.version`;
}
