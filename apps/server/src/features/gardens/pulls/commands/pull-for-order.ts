import { gardens } from '@rootclock/contracts';
import { FIELD, lotAt, moved, stagedFor } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { judge } from '../../../promises/allocation/judging.ts';
import { loadScope } from '../../../promises/allocation/load.ts';
import { consumeReservations } from '../../../promises/reservations/consume.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { loadPlaces } from '../../../stock/lots/store.ts';
import { handling } from '../details.ts';
import { loadOrderRows, requireAcceptedItem, requireAtPlaces, requireUnheld } from '../rows.ts';

/** Days and releases are the planner's business; what the client asked of the plants themselves is not up to whoever pulls. */
const PLANNERS_OWN = new Set(['not-ready', 'past-plant-by', 'released-by-hand']);

/** Plants go from their places to the order's staging. It is never refused for another order's sake: the replan settles who is short then. */
export const pullForOrder = command({
  name: 'pullForOrder',
  input: gardens.pullForOrder,
  roles: FIELD,
  run: async (context, input) => {
    const { order, lineOf, lotOf } = await loadOrderRows(context, input.orderId, input.happenedOn, input.rows);
    await loadPlaces(context, [...new Set(input.rows.map(({ placeId }) => placeId))]);
    const lots = [...new Set(input.rows.map(({ lotId }) => lotId))].map(lotOf);
    requireUnheld(lots);
    for (const row of input.rows) requireAcceptedItem(lineOf(row.lineId), lotOf(row.lotId));
    requireAtPlaces(input.rows, lotOf);
    const scope = await loadScope(context, {
      lines: input.rows.map(({ lineId }) => lineId),
      lots: lots.map(({ id }) => id),
    });
    for (const row of input.rows) {
      const line = scope.lines.find(({ id }) => id === row.lineId);
      const supply = scope.supplies.find(({ id }) => id === row.lotId);
      const reasons =
        line && supply ? judge(supply, line, scope).reasons.filter((reason) => !PLANNERS_OWN.has(reason)) : [];
      if (reasons.length > 0) refuse('does-not-serve', { supply: lotOf(row.lotId).code, reasons }, 'lotId');
    }
    const unchecked = lots.filter(({ rootCheckedOn }) => rootCheckedOn === null);
    if (unchecked.length > 0 && !input.confirmed)
      refuse('root-ball-not-checked', { lots: unchecked.map(({ code }) => code) }, 'rows');
    const entryId = await postEntry(
      context,
      {
        kind: 'pull',
        happenedOn: input.happenedOn,
        note: input.note,
        details: handling.written({ orderId: order.id }),
      },
      input.rows.map(({ lotId, placeId, lineId, units }) =>
        moved(units, lotAt(lotId, placeId), stagedFor(lotId, lineId)),
      ),
    );
    await consumeReservations(
      context,
      input.rows.map(({ lineId, lotId, units }) => ({ lineId, supplyId: lotId, units })),
    );
    return { entryId };
  },
});
