import { propagation } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { openEntry } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { loadOpenBatch } from '../open.ts';

/** Seed with a double dormancy comes up after its second winter: the batch stays open, and screens stop asking what became of it. */
export const keepForSecondWinter = command({
  name: 'keepForSecondWinter',
  input: propagation.keepForSecondWinter,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    const entryId = await openEntry(context, {
      kind: 'observe',
      happenedOn: input.happenedOn,
      note: input.note,
      details: { secondWinter: true },
      subjects: [{ kind: 'batch', id: batch.id }],
    });
    await settleBatch(context, batch.id);
    return { entryId };
  },
});
