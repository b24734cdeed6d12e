import type { OrderState } from '@rootclock/domain';
import type { CommandContext } from '../../../trpc/operation.ts';
import { insertAlternatives, type LineRow } from './store.ts';

export async function updateLine(context: CommandContext, line: Omit<LineRow, 'plantId' | 'containerId'>): Promise<void> {
  const { tx, nurseryId } = context;
  await tx.$executeRaw`
    UPDATE order_line SET units = ${line.units}, bed_id = ${line.bedId}::uuid, seed_zone = ${line.seedZone}, wild_type = ${line.wildType}, untreated = ${line.untreated}
     WHERE nursery_id = ${nurseryId}::uuid AND id = ${line.lineId}::uuid`;
  await tx.$executeRaw`DELETE FROM line_alternative WHERE nursery_id = ${nurseryId}::uuid AND line_id = ${line.lineId}::uuid`;
  await insertAlternatives(context, [line]);
}

/** Sends lines behind all others, in the order given. */
export async function setRanks({ tx, nurseryId }: CommandContext, ranks: readonly { lineId: string; rank: number }[]): Promise<void> {
  if (ranks.length === 0) return;
  await tx.$executeRaw`
    UPDATE order_line l SET rank = r.rank FROM jsonb_to_recordset(${JSON.stringify(ranks)}::jsonb) AS r ("lineId" uuid, rank int)
     WHERE l.nursery_id = ${nurseryId}::uuid AND l.id = r."lineId"`;
}

export async function setWithdrawn({ tx, nurseryId, today }: CommandContext, lineId: string): Promise<void> {
  await tx.$executeRaw`UPDATE order_line SET withdrawn_on = ${today}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${lineId}::uuid`;
}

export async function setDay({ tx, nurseryId }: CommandContext, orderId: string, dueOn: string): Promise<void> {
  await tx.$executeRaw`UPDATE garden_order SET due_on = ${dueOn}::date WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export async function setState({ tx, nurseryId }: CommandContext, orderId: string, state: OrderState): Promise<void> {
  await tx.$executeRaw`UPDATE garden_order SET state = ${state} WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}

export async function setNote({ tx, nurseryId }: CommandContext, orderId: string, note: string): Promise<void> {
  await tx.$executeRaw`UPDATE garden_order SET note = ${note} WHERE nursery_id = ${nurseryId}::uuid AND id = ${orderId}::uuid`;
}
