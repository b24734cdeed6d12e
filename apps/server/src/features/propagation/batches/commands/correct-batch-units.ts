import { propagation } from '@rootclock/contracts';
import { batchAt, FIELD, moved, outside } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { settleBatch } from '../history/settle.ts';
import { loadOpenBatch } from '../open.ts';
import { type BatchFacts, loadPlace } from '../store.ts';

/** Cells or trays that are there and were not booked are found, those that are missing unexplained. */
export const correctBatchUnits = command({
  name: 'correctBatchUnits',
  input: propagation.correctBatchUnits,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    const placeId = input.placeId ? (await loadPlace(context, input.placeId, 'placeId')).id : onlyPlaceOf(batch);
    const booked = batch.balances.find((balance) => balance.placeId === placeId)?.units ?? 0;
    const here = batchAt(batch.id, placeId);
    const difference = input.units - booked;
    const movements =
      difference > 0
        ? [moved(difference, outside('found'), here)]
        : difference < 0
          ? [moved(-difference, here, outside('unexplained'))]
          : [];
    const entryId = await postEntry(
      context,
      {
        kind: 'count',
        happenedOn: input.happenedOn,
        note: input.note,
        subjects: [{ kind: 'batch', id: batch.id }],
        details: { correctedUnits: { booked, counted: input.units, countKind: input.countKind } },
      },
      movements,
    );
    await settleBatch(context, batch.id);
    return { entryId, difference };
  },
});

function onlyPlaceOf(batch: BatchFacts): string {
  if (batch.balances.length > 1)
    refuse(
      'which-place',
      {
        of: batch.code,
        places: batch.balances.map(({ placeId, placeCode, units }) => ({ placeId, code: placeCode, units })),
      },
      'placeId',
    );
  return found(batch.balances[0], 'place', 'placeId').placeId;
}
