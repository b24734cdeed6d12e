import { propagation } from '@rootclock/contracts';
import { batchAt, FIELD, moved, outside } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { askBeforeDead, loadOpenBatch, standingUnits } from '../open.ts';

/** What still stands is written off with a cause in the same entry, so that nothing is left unaccounted for. */
export const closeBatch = command({
  name: 'closeBatch',
  input: propagation.closeBatch,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    const left = standingUnits(batch);
    const cause = input.writeOffCause ?? null;
    if (left > 0 && cause === null)
      refuse('units-left', { left, unit: batch.unit, batch: batch.code }, 'writeOffCause');
    askBeforeDead(batch, cause, input.happenedOn, input.confirmed, 'writeOffCause');
    const entryId = await postEntry(
      context,
      {
        kind: 'close',
        happenedOn: input.happenedOn,
        cause,
        note: input.note,
        subjects: [{ kind: 'batch', id: batch.id }],
      },
      batch.balances.map(({ placeId, units }) => moved(units, batchAt(batch.id, placeId), outside('lost'))),
    );
    await settleBatch(context, batch.id);
    return { entryId, writtenOffUnits: left };
  },
});
