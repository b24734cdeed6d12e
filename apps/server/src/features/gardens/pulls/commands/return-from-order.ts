import { gardens } from '@rootclock/contracts';
import { FIELD, lotAt, moved, outside, stagedFor } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { requireOpenPlaces } from '../../../stock/lots/open-places.ts';
import { handling } from '../details.ts';
import { loadOrderRows, requireStaged } from '../rows.ts';
import { loadQuarantine, loadStaged } from '../store.ts';

/**
 * What was pulled and not planted. Unopened pots keep their lot and its clocks and wait at a quarantine place, since they stood at somebody
 * else's site; plants that were knocked out of their pots are lost, and repotting some of them is an entry of its own.
 */
export const returnFromOrder = command({
  name: 'returnFromOrder',
  input: gardens.returnFromOrder,
  roles: FIELD,
  run: async (context, input) => {
    const { order, lotOf } = await loadOrderRows(context, input.orderId, input.happenedOn, input.rows, {
      withdrawnToo: true,
    });
    const anyLost = input.rows.some(({ lostUnits }) => lostUnits > 0);
    if (anyLost && input.cause === null) refuse('cause-needed', undefined, 'cause');
    requireStaged(
      input.rows.map(({ lineId, lotId, returnedUnits, lostUnits }) => ({
        lineId,
        lotId,
        units: returnedUnits + lostUnits,
      })),
      await loadStaged(context, order.id),
      lotOf,
    );
    const anyReturned = input.rows.some(({ returnedUnits }) => returnedUnits > 0);
    const placeId = input.placeId ?? (anyReturned ? await loadQuarantine(context) : undefined);
    if (anyReturned && placeId === undefined) refuse('no-quarantine-place', undefined, 'placeId');
    if (placeId !== undefined) await requireOpenPlaces(context, [placeId]);
    const entryId = await postEntry(
      context,
      {
        kind: 'return',
        happenedOn: input.happenedOn,
        note: input.note,
        cause: anyLost ? input.cause : null,
        details: handling.written({ orderId: order.id }),
      },
      input.rows.flatMap(({ lineId, lotId, returnedUnits, lostUnits }) => [
        ...(returnedUnits > 0
          ? [moved(returnedUnits, stagedFor(lotId, lineId), lotAt(lotId, found(placeId, 'place', 'placeId')))]
          : []),
        ...(lostUnits > 0 ? [moved(lostUnits, stagedFor(lotId, lineId), outside('lost'))] : []),
      ]),
    );
    return { entryId };
  },
});
