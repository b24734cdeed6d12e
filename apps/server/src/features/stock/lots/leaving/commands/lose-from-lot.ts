import { stock } from '@rootclock/contracts';
import { FIELD, lotAt, moved, outside } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { postEntry, requireSince } from '../../../ledger/post.ts';
import { drawFromLot } from '../../draw.ts';
import { loadLot } from '../../store.ts';
import { askIfDormant } from '../looks-dead.ts';

/** What happened to plants is never refused for a promise's sake: the replan gives reservations up where too little is left. */
export const loseFromLot = command({
  name: 'loseFromLot',
  input: stock.loseFromLot,
  roles: FIELD,
  run: async (context, input) => {
    const lot = await loadLot(context, input.lotId);
    requireSince(input.happenedOn, lot.pottedOn);
    askIfDormant([lot], input);
    const drawn = drawFromLot(lot, input.units, input.placeId);
    const entryId = await postEntry(
      context,
      { kind: 'lose', happenedOn: input.happenedOn, cause: input.cause, note: input.note },
      drawn.map(({ placeId, units }) => moved(units, lotAt(lot.id, placeId), outside('lost'))),
    );
    return { entryId };
  },
});
