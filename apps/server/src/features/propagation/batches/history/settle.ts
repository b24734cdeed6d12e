import { batchState } from '@rootclock/domain';
import type { CommandContext } from '../../../../trpc/operation.ts';
import { storeBatchState } from '../../../stock/store.ts';
import { loadProtocolVersion, planOf } from '../../protocols/store.ts';
import { loadBatch } from '../store.ts';
import { loadBatchEntries } from './store.ts';

/**
 * Brings a batch's counts, clocks, stage, forecast and closing in line with its entries. Commands call it when they have written theirs, and the
 * reversal of an entry calls it as well: since all of it is derived, nothing has to remember what it was before.
 */
export async function settleBatch(context: CommandContext, batchId: string): Promise<void> {
  context.touched.batch(batchId);
  const batch = await loadBatch(context, batchId);
  const entries = await loadBatchEntries(context, batchId);
  const standing = batch.balances.reduce((units, balance) => units + balance.units, 0);
  const plan = batch.protocolVersionId ? planOf(await loadProtocolVersion(context, batch.protocolVersionId)) : null;
  await storeBatchState(context, batchId, batchState(batch, entries, standing, plan));
}
