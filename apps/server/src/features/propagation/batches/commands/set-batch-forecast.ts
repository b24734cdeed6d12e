import { propagation } from '@rootclock/contracts';
import { GROWERS, isUnitOnePlant } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { openEntry, requireSince } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { loadOpenBatch, standingUnits } from '../open.ts';
import { loadContainer } from '../store.ts';

/** What may be promised from the batch, and from when. Learning elsewhere never changes it: only an entry on this batch does. */
export const setBatchForecast = command({
  name: 'setBatchForecast',
  input: propagation.setBatchForecast,
  roles: GROWERS,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    if (input.targetContainerId) await loadContainer(context, input.targetContainerId, 'targetContainerId');
    if (input.readyOn) requireSince(input.readyOn, batch.startedOn, 'readyOn');
    const standing = standingUnits(batch);
    if (isUnitOnePlant(batch.unit) && input.cautiousUnits > standing) {
      refuse('cautious-over-units', { cautious: input.cautiousUnits, standing, unit: batch.unit, batch: batch.code }, 'cautiousUnits');
    }
    const forecast = { targetContainerId: input.targetContainerId ?? null, cautiousUnits: input.cautiousUnits, readyOn: input.readyOn ?? null };
    const entryId = await openEntry(context, { kind: 'observe', happenedOn: input.happenedOn, note: input.note, details: { forecast }, subjects: [{ kind: 'batch', id: batch.id }] });
    await settleBatch(context, batch.id);
    return { entryId };
  },
});
