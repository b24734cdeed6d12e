import { BATCH_UNITS } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { relatedBatch } from './head-reads.ts';

export const pottedLot = z.strictObject({
  lotId: z.string(),
  code: z.string(),
  containerId: z.string(),
  containerName: z.string(),
  pottedOn: z.string(),
  /** Plants potted into it from this batch. */
  pottedUnits: z.number(),
  standingUnits: z.number(),
  plantByOn: z.nullable(z.string()),
  closedOn: z.nullable(z.string()),
});
export type PottedLot = z.infer<typeof pottedLot>;

export async function readPottedLots({ tx, nurseryId }: ReadContext, batchId: string): Promise<PottedLot[]> {
  return tx.rows(pottedLot)`
    SELECT l.id::text AS "lotId", l.code, l.container_id::text AS "containerId", c.name AS "containerName", l.potted_on::text AS "pottedOn",
           coalesce(potted.units, 0) AS "pottedUnits", coalesce(standing.units, 0) AS "standingUnits", l.plant_by_on::text AS "plantByOn", l.closed_on::text AS "closedOn"
      FROM lineage_told g
      JOIN lot_named l ON l.nursery_id = g.nursery_id AND l.id = g.child_lot_id
      JOIN container_named c ON c.nursery_id = l.nursery_id AND c.id = l.container_id
      LEFT JOIN LATERAL (
        SELECT sum(m.to_units)::int AS units
          FROM account_told f JOIN movement_told m ON m.nursery_id = f.nursery_id AND m.from_account_id = f.id
          JOIN account_told t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id
         WHERE f.nursery_id = g.nursery_id AND f.batch_id = ${batchId}::uuid AND t.lot_id = l.id
           AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = m.nursery_id AND r.reverses_id = m.entry_id)) potted ON true
      LEFT JOIN LATERAL (SELECT sum(a.units)::int AS units FROM units_standing a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place') standing ON true
     WHERE g.nursery_id = ${nurseryId}::uuid AND g.parent_id = ${batchId}::uuid
     ORDER BY l.potted_on, l.code`;
}

/** A batch that was drawn from these packs. */
export const drawnBatch = z.strictObject({
  ...relatedBatch.shape,
  startedOn: z.string(),
  unit: z.enum(BATCH_UNITS),
  startedUnits: z.number(),
  /** Packs that were used up by it. */
  packs: z.number(),
  closedOn: z.nullable(z.string()),
});
export type DrawnBatch = z.infer<typeof drawnBatch>;

export async function readDrawnBatches({ tx, nurseryId }: ReadContext, batchId: string): Promise<DrawnBatch[]> {
  return tx.rows(drawnBatch)`
    SELECT b.id::text AS "batchId", b.code, b.started_on::text AS "startedOn", b.unit, b.closed_on::text AS "closedOn", drawn.units AS "startedUnits", drawn.packs
      FROM batch_told b
      JOIN LATERAL (SELECT coalesce(sum(m.to_units), 0)::int AS units, coalesce(sum(m.from_units), 0)::int AS packs FROM movement_told m
                     WHERE m.nursery_id = b.nursery_id AND m.entry_id = b.created_entry_id) drawn ON true
     WHERE b.nursery_id = ${nurseryId}::uuid AND b.parent_batch_id = ${batchId}::uuid
       AND NOT EXISTS (SELECT 1 FROM entry_told r WHERE r.nursery_id = b.nursery_id AND r.reverses_id = b.created_entry_id)
     ORDER BY b.started_on, b.code`;
}
