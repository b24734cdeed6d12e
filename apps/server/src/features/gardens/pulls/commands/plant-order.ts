import { gardens } from '@rootclock/contracts';
import { FIELD, lotAt, type MovementDraft, moved, outside, stagedFor } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { consumeReservations } from '../../../promises/reservations/consume.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { loadPlaces } from '../../../stock/lots/store.ts';
import { handling } from '../details.ts';
import { loadOrderRows, requireAcceptedItem, requireAtPlaces, requireStaged, requireUnheld } from '../rows.ts';
import { loadStaged } from '../store.ts';

/**
 * Plants are in the ground: the whole order or a part, more than was pulled too. All of it is one entry. What was never pulled passes
 * through the line's staging all the same, so that the ledger knows for which line it was planted.
 */
export const plantOrder = command({
  name: 'plantOrder',
  input: gardens.plantOrder,
  roles: FIELD,
  run: async (context, input) => {
    const { order, lineOf, lotOf } = await loadOrderRows(context, input.orderId, input.happenedOn, input.rows);
    if (order.siteId === null) refuse('wrong-order-kind', { order: order.code, kind: order.kind }, 'orderId');
    const extras = input.rows.flatMap(({ lineId, lotId, extra }, at) =>
      extra === null ? [] : [{ lineId, lotId, ...extra, field: `rows.${at}.extra.units` }],
    );
    const fromPlaces = extras.flatMap((extra) => (extra.from === 'place' ? [extra] : []));
    await loadPlaces(context, [...new Set(fromPlaces.map(({ placeId }) => placeId))]);
    requireUnheld([...new Set(input.rows.map(({ lotId }) => lotId))].map(lotOf));
    for (const { lineId, lotId } of extras) requireAcceptedItem(lineOf(lineId), lotOf(lotId));
    requireStaged(input.rows, await loadStaged(context, order.id), lotOf);
    requireAtPlaces(fromPlaces, lotOf);
    const movements: MovementDraft[] = [
      ...extras.map((extra) =>
        moved(
          extra.units,
          extra.from === 'place' ? lotAt(extra.lotId, extra.placeId) : outside('found'),
          stagedFor(extra.lotId, extra.lineId),
        ),
      ),
      ...input.rows.map(({ lineId, lotId, units, extra }) =>
        moved(units + (extra?.units ?? 0), stagedFor(lotId, lineId), outside('planted')),
      ),
    ];
    const entryId = await postEntry(
      context,
      {
        kind: 'plant',
        happenedOn: input.happenedOn,
        note: input.note,
        details: handling.written({ orderId: order.id }),
      },
      movements,
    );
    await consumeReservations(
      context,
      fromPlaces.map(({ lineId, lotId, units }) => ({ lineId, supplyId: lotId, units })),
    );
    return { entryId };
  },
});
