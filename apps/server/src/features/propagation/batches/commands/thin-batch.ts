import { propagation } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../../stock/ledger/post.ts';
import { observed } from '../../../stock/lots/looking/store.ts';
import { loadBatchSeen } from '../open.ts';

/** Thinning is an observation: the cells stay, so nothing leaves the ledger. */
export const thinBatch = command({
  name: 'thinBatch',
  input: propagation.thinBatch,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadBatchSeen(context, input.batchId, input.happenedOn);
    const entryId = await openEntry(
      context,
      {
        kind: 'observe',
        happenedOn: input.happenedOn,
        note: input.note,
        subjects: [{ kind: 'batch', id: batch.id }],
      },
      [observed(context, { kind: 'thinned', result: null, amount: input.thinnedUnits ?? null })],
    );
    return { entryId };
  },
});
