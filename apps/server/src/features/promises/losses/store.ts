import type { promises } from '@rootclock/contracts';
import * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { CommandContext, ReadContext } from '../../../trpc/operation.ts';
import type { LostLine } from './lost-lines.ts';

/** An entry of the command says best what happened, and on which day. */
export async function insertLosses(
  { tx, nurseryId, commandId, today }: CommandContext,
  otherwise: promises.LossSource,
  lost: readonly LostLine[],
): Promise<void> {
  await tx.run`
    INSERT INTO line_loss (nursery_id, line_id, command_id, cause, units, filled_before, supplies, happened_on)
    SELECT ${nurseryId}::uuid, x."lineId", ${commandId}::uuid, CASE WHEN e.id IS NULL THEN ${otherwise} ELSE 'entry' END, x.units, x."filledBefore", x.supplies, coalesce(e.happened_on, ${today}::date)
      FROM jsonb_to_recordset(${JSON.stringify(lost)}::jsonb) AS x ("lineId" uuid, units int, "filledBefore" int, supplies jsonb)
      LEFT JOIN entry_told e ON e.nursery_id = ${nurseryId}::uuid AND e.id = ${commandId}::uuid`;
}

/** Answers whether there was anything to settle. */
export async function settleWhole(
  { tx, nurseryId, commandId, today }: CommandContext,
  lineIds: readonly string[],
): Promise<boolean> {
  const settled = await tx.run`
    UPDATE line_loss SET settled_on = ${today}::date, settled_how = 'whole', settled_command_id = ${commandId}::uuid
     WHERE nursery_id = ${nurseryId}::uuid AND line_id = ANY (${[...lineIds]}::uuid[]) AND settled_on IS NULL`;
  return settled > 0;
}

export const lossState = z.strictObject({
  lineId: z.string(),
  orderCode: z.string(),
  settledOn: z.nullable(z.string()),
  settledHow: z.nullable(z.enum(['whole', 'set-aside'])),
});
export type LossState = z.infer<typeof lossState>;

export async function loadLoss({ tx, nurseryId }: ReadContext, id: string): Promise<LossState> {
  const row = await tx.row(lossState)`
    SELECT x.line_id::text AS "lineId", o.code AS "orderCode", x.settled_on::text AS "settledOn", x.settled_how AS "settledHow"
      FROM line_loss x JOIN line_asked l ON l.nursery_id = x.nursery_id AND l.id = x.line_id JOIN order_named o ON o.nursery_id = l.nursery_id AND o.id = l.order_id
     WHERE x.nursery_id = ${nurseryId}::uuid AND x.id = ${id}::uuid`;
  return found(row, 'loss', 'lossId');
}

/** The loss and what its line lost before it; what was lost since then nobody has seen yet. */
export async function setAside(
  { tx, nurseryId, commandId, today }: CommandContext,
  id: string,
  note: string,
): Promise<void> {
  await tx.run`
    UPDATE line_loss x SET settled_on = ${today}::date, settled_how = 'set-aside', settled_command_id = ${commandId}::uuid, note = ${note}
      FROM line_loss seen JOIN command_taken c ON c.nursery_id = seen.nursery_id AND c.id = seen.command_id
     WHERE seen.nursery_id = ${nurseryId}::uuid AND seen.id = ${id}::uuid AND x.nursery_id = seen.nursery_id AND x.line_id = seen.line_id AND x.settled_on IS NULL
       AND EXISTS (SELECT 1 FROM command_taken b WHERE b.nursery_id = x.nursery_id AND b.id = x.command_id AND b.version <= c.version)`;
}
