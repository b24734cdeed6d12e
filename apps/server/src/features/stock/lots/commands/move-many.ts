import { stock } from '@rootclock/contracts';
import { batchAt, FIELD, lotAt, moved } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../ledger/post.ts';
import { involvesQuarantine, requireOpenPlaces } from '../open-places.ts';
import { loadSelection } from '../selection.ts';

/** A whole place takes the batches that stand there along. */
export const moveMany = command({
  name: 'moveMany',
  input: stock.moveMany,
  roles: FIELD,
  run: async (context, { toPlaceId, happenedOn, note, ...selection }) => {
    const [to] = await requireOpenPlaces(context, [toPlaceId], 'toPlaceId');
    const { lots, batches } = await loadSelection(context, selection);
    for (const lot of lots) requireSince(happenedOn, lot.pottedOn);
    const movements = [
      ...lots.flatMap((lot) =>
        lot.balances
          .filter(({ placeId }) => placeId !== toPlaceId)
          .map(({ placeId, units }) => moved(units, lotAt(lot.id, placeId), lotAt(lot.id, toPlaceId))),
      ),
      ...batches
        .filter(({ placeId }) => placeId !== toPlaceId)
        .map(({ id, placeId, units }) => moved(units, batchAt(id, placeId), batchAt(id, toPlaceId))),
    ];
    if (movements.length === 0) refuse('nothing-there', { of: to?.code ?? '' }, 'toPlaceId');
    const isOnlyMoved = !lots.some((lot) => involvesQuarantine(to, lot));
    const entryId = await postEntry(context, { kind: 'move', happenedOn, note, isOnlyMoved }, movements);
    return { entryId, units: movements.reduce((sum, { fromUnits }) => sum + fromUnits, 0) };
  },
});
