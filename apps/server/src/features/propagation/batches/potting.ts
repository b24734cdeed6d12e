import { lastPottingDay, POTTING_DAYS } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import type { CommandContext } from '../../../trpc/operation.ts';
import { requireSince } from '../../stock/ledger/post.ts';
import { loadLot } from '../../stock/lots/store.ts';
import { isPottedFrom } from '../../stock/store.ts';
import type { BatchFacts } from './store.ts';

/**
 * A lot that more of the same batch may be potted into: made of this batch alone, in the same container, and begun at most some days ago.
 * The day it was begun stays, since the earliest day governs its clocks.
 */
export async function lotToPotInto(
  context: CommandContext,
  batch: BatchFacts,
  potting: { lotId: string; containerId?: string | null | undefined },
  on: string,
  path: string,
): Promise<void> {
  const lot = await loadLot(context, potting.lotId, `${path}.lotId`);
  const sameContainer = !potting.containerId || potting.containerId === lot.containerId;
  if (!sameContainer || lot.plantId !== batch.plantId || !(await isPottedFrom(context, lot.id, batch.id))) {
    refuse('lot-not-of-batch', { lot: lot.code, batch: batch.code }, `${path}.lotId`);
  }
  requireSince(on, lot.pottedOn);
  const lastOn = lastPottingDay(lot.pottedOn, POTTING_DAYS);
  if (on > lastOn) refuse('potting-is-over', { lot: lot.code, pottedOn: lot.pottedOn, lastOn }, `${path}.lotId`);
}
