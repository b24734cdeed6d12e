import * as z from 'zod/mini';
import type { ReadContext } from '../../../../../trpc/operation.ts';

export const batchReservation = z.strictObject({
  orderId: z.string(),
  orderCode: z.string(),
  clientName: z.string(),
  dueOn: z.string(),
  units: z.number(),
  pinned: z.boolean(),
});
export type BatchReservation = z.infer<typeof batchReservation>;

/** For whom units of the batch are held. The tables of orders are read here and never written. */
export async function readBatchReservations(
  { tx, nurseryId }: ReadContext,
  batchId: string,
): Promise<BatchReservation[]> {
  return tx.rows(batchReservation)`
    SELECT o.id::text AS "orderId", o.code AS "orderCode", k.name AS "clientName", o.due_on::text AS "dueOn", r.units, r.pinned
      FROM units_reserved r
      JOIN line_asked n ON n.nursery_id = r.nursery_id AND n.id = r.line_id
      JOIN order_named o ON o.nursery_id = n.nursery_id AND o.id = n.order_id
      JOIN client_named k ON k.nursery_id = o.nursery_id AND k.id = o.client_id
     WHERE r.nursery_id = ${nurseryId}::uuid AND r.batch_id = ${batchId}::uuid
     ORDER BY o.due_on, o.code`;
}
