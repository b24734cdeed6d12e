import { propagation } from '@rootclock/contracts';
import { batchAt, FIELD, moved } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { drawFromLot } from '../../../stock/lots/draw.ts';
import { requireOpenPlaces } from '../../../stock/lots/open-places.ts';
import { settleBatch } from '../history/settle.ts';
import { loadOpenBatch } from '../open.ts';

export const moveBatch = command({
  name: 'moveBatch',
  input: propagation.moveBatch,
  roles: FIELD,
  run: async (context, input) => {
    const batch = await loadOpenBatch(context, input.batchId, input.happenedOn);
    // Said of the place it should leave: nobody would look for the mistake in the place it goes to.
    if (input.fromPlaceId && !batch.balances.some(({ placeId }) => placeId === input.fromPlaceId))
      refuse('nothing-there', { of: batch.code }, 'fromPlaceId');
    const place = found((await requireOpenPlaces(context, [input.toPlaceId], 'toPlaceId'))[0], 'place', 'toPlaceId');
    const elsewhere = {
      code: batch.code,
      balances: batch.balances.filter(
        (balance) => balance.placeId !== place.id && (!input.fromPlaceId || balance.placeId === input.fromPlaceId),
      ),
    };
    if (elsewhere.balances.length === 0)
      refuse('batch-already-there', { batch: batch.code, place: place.code }, 'toPlaceId');
    const drawn = input.units ? drawFromLot(elsewhere, input.units, input.fromPlaceId) : elsewhere.balances;
    const entryId = await postEntry(
      context,
      { kind: 'move', happenedOn: input.happenedOn, note: input.note, subjects: [{ kind: 'batch', id: batch.id }] },
      drawn.map(({ placeId, units }) => moved(units, batchAt(batch.id, placeId), batchAt(batch.id, place.id))),
    );
    await settleBatch(context, batch.id);
    return { entryId, place: place.code };
  },
});
