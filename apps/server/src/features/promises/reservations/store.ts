import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';

const pinnedUnits = z.strictObject({ units: z.number() });

/** Pins all that is reserved from lots for these lines, and answers how many units are pinned then. */
export async function pinLotsOf({ tx, nurseryId }: CommandContext, lineIds: readonly string[]): Promise<number> {
  const rows = await tx.rows(pinnedUnits)`
    WITH floating AS (
      DELETE FROM reservation WHERE nursery_id = ${nurseryId}::uuid AND line_id = ANY (${[...lineIds]}::uuid[]) AND lot_id IS NOT NULL AND NOT pinned
      RETURNING nursery_id, line_id, supply_id, lot_id, units)
    INSERT INTO reservation (nursery_id, line_id, supply_id, lot_id, units, pinned)
    SELECT nursery_id, line_id, supply_id, lot_id, units, true FROM floating
    ON CONFLICT (nursery_id, line_id, supply_id, pinned) DO UPDATE SET units = reservation.units + excluded.units
    RETURNING units`;
  return rows.reduce((sum, { units }) => sum + units, 0);
}

export const supplyFacts = z.strictObject({
  id: z.string(),
  kind: z.enum(['lot', 'batch']),
  code: z.string(),
});
export type SupplyFacts = z.infer<typeof supplyFacts>;

/** A lot or batch by id; one that is not this nursery's answers as not found. */
export async function loadSupply({ tx, nurseryId }: ReadContext, id: string): Promise<SupplyFacts> {
  const row = await tx.row(supplyFacts)`
    SELECT id::text, 'lot' AS kind, code FROM lot_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid
    UNION ALL SELECT id::text, 'batch', code FROM batch_named WHERE nursery_id = ${nurseryId}::uuid AND id = ${id}::uuid`;
  return found(row, 'supply', 'supplyId');
}

export const lineState = z.strictObject({
  id: z.string(),
  scientificName: z.string(),
  withdrawn: z.boolean(),
  orderId: z.string(),
  orderCode: z.string(),
  orderState: z.string(),
});
export type LineState = z.infer<typeof lineState>;

export async function loadLineState({ tx, nurseryId }: ReadContext, id: string): Promise<LineState> {
  const row = await tx.row(lineState)`
    SELECT l.id::text, p.scientific_name AS "scientificName", l.withdrawn_on IS NOT NULL AS withdrawn, o.id::text AS "orderId", o.code AS "orderCode", o.state AS "orderState"
      FROM line_asked l JOIN order_named o ON o.nursery_id = l.nursery_id AND o.id = l.order_id JOIN plant_named p ON p.nursery_id = l.nursery_id AND p.id = l.plant_id
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = ${id}::uuid`;
  return found(row, 'line', 'lineId');
}

/** Keeps a lot or batch from serving a line by itself, until it is pinned to it again. */
export async function refuseSupply(
  { tx, nurseryId, today }: CommandContext,
  lineId: string,
  supplyId: string,
): Promise<void> {
  await tx.run`
    INSERT INTO line_refusal (nursery_id, line_id, supply_id, refused_on) VALUES (${nurseryId}::uuid, ${lineId}::uuid, ${supplyId}::uuid, ${today}::date)
    ON CONFLICT (nursery_id, line_id, supply_id) DO UPDATE SET refused_on = excluded.refused_on, taken_back_on = NULL`;
}

export async function takeRefusalBack(
  { tx, nurseryId, today }: CommandContext,
  lineId: string,
  supplyId: string,
): Promise<void> {
  await tx.run`
    UPDATE line_refusal SET taken_back_on = ${today}::date
     WHERE nursery_id = ${nurseryId}::uuid AND line_id = ${lineId}::uuid AND supply_id = ${supplyId}::uuid AND taken_back_on IS NULL`;
}
