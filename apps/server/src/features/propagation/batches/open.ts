import { looksDeadTooSoon } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { requireSince } from '../../stock/ledger/post.ts';
import { type BatchFacts, loadBatch } from './store.ts';

/** Loads a batch that an entry of this day may still change. */
export async function loadOpenBatch(
  context: ReadContext,
  batchId: string,
  happenedOn: string,
  field = 'batchId',
): Promise<BatchFacts> {
  const batch = await loadBatch(context, batchId, field);
  requireSince(happenedOn, batch.startedOn);
  if (batch.closedOn !== null)
    refuse('batch-closed', { batch: batch.code, closedOn: batch.closedOn }, field === 'batchId' ? undefined : field);
  return batch;
}

/** Loads a batch that something was seen of on this day: what was seen before it closed may be written down after. */
export async function loadBatchSeen(context: ReadContext, batchId: string, happenedOn: string): Promise<BatchFacts> {
  const batch = await loadBatch(context, batchId);
  requireSince(happenedOn, batch.startedOn);
  if (batch.closedOn !== null && happenedOn > batch.closedOn)
    refuse('batch-closed', { batch: batch.code, closedOn: batch.closedOn }, 'happenedOn');
  return batch;
}

export const standingUnits = (batch: Pick<BatchFacts, 'balances'>): number =>
  batch.balances.reduce((units, balance) => units + balance.units, 0);

/** Asks once more before plants that may only be dormant are written off as dead. */
export function askBeforeDead(
  batch: BatchFacts,
  cause: string | null,
  on: string,
  confirmed: boolean,
  field: string,
): void {
  if (cause !== 'looks-dead' || confirmed) return;
  if (looksDeadTooSoon({ dormantMonths: batch.dormantMonths, lastEmergenceMd: batch.lastEmergenceMd, on })) {
    refuse('may-be-dormant', { plant: batch.scientificName, lastEmergenceMd: batch.lastEmergenceMd }, field);
  }
}
