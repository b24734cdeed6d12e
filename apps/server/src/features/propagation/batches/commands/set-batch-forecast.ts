import { propagation } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { loadOpenBatch, standingUnits } from '../open.ts';
import { forecastFor } from '../starting/expected.ts';
import { loadContainer } from '../store.ts';

/** What may be promised from the batch, and from when. Learning elsewhere never changes it: only an entry on this batch does. */
export const setBatchForecast = command({
  name: 'setBatchForecast',
  input: propagation.setBatchForecast,
  roles: GROWERS,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    if (input.targetContainerId) await loadContainer(context, input.targetContainerId, 'targetContainerId');
    const forecast = forecastFor(
      { ...batch, standing: standingUnits(batch) },
      { ...input, targetContainerId: input.targetContainerId ?? null },
    );
    const entryId = await openEntry(context, {
      kind: 'observe',
      happenedOn: input.happenedOn,
      note: input.note,
      details: { forecast },
      subjects: [{ kind: 'batch', id: batch.id }],
    });
    await settleBatch(context, batch.id);
    return { entryId };
  },
});
