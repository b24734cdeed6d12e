import { stock } from '@rootclock/contracts';
import { FIELD, lotAt, moved } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../ledger/post.ts';
import { drawFromLot } from '../draw.ts';
import { involvesQuarantine, requireOpenPlaces } from '../open-places.ts';
import { loadLot } from '../store.ts';

export const moveLot = command({
  name: 'moveLot',
  input: stock.moveLot,
  roles: FIELD,
  run: async (context, { lotId, placeId, units, toPlaceId, happenedOn, note }) => {
    const lot = await loadLot(context, lotId);
    requireSince(happenedOn, lot.pottedOn);
    const [to] = await requireOpenPlaces(context, [toPlaceId], 'toPlaceId');
    const elsewhere = {
      ...lot,
      balances: lot.balances.filter(
        (balance) => balance.placeId !== toPlaceId && (!placeId || balance.placeId === placeId),
      ),
    };
    if (elsewhere.balances.length === 0) refuse('nothing-there', { of: lot.code }, placeId ? 'placeId' : 'lotId');
    const drawn = units ? drawFromLot(elsewhere, units, placeId) : elsewhere.balances;
    const entryId = await postEntry(
      context,
      { kind: 'move', happenedOn, note, isOnlyMoved: !involvesQuarantine(to, lot) },
      drawn.map((part) => moved(part.units, lotAt(lot.id, part.placeId), lotAt(lot.id, toPlaceId))),
    );
    return { entryId };
  },
});
