import { gardens } from '@rootclock/contracts';
import { GROWERS, lotAt, type MovementDraft, moved, stagedFor } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadOpenOrder, setState } from '../../../orders/orders/store.ts';
import { postEntry } from '../../../stock/ledger/post.ts';
import { requireOpenPlaces } from '../../../stock/lots/open-places.ts';
import { cancelling } from '../details.ts';
import { loadStaged } from '../store.ts';

/**
 * The plants are free again. Even where nothing was pulled an entry says so: taking it back opens the order again, with the pulled plants it
 * brought back.
 */
export const cancelOrder = command({
  name: 'cancelOrder',
  input: gardens.cancelOrder,
  roles: GROWERS,
  run: async (context, input) => {
    const order = await loadOpenOrder(context, input.orderId);
    const returned: MovementDraft[] = [];
    if (order.stagedUnits > 0) {
      if (input.placeId === null)
        refuse('plants-are-staged', { order: order.code, units: order.stagedUnits }, 'placeId');
      const [place] = await requireOpenPlaces(context, [input.placeId]);
      const { id: placeId } = found(place, 'place', 'placeId');
      returned.push(
        ...(await loadStaged(context, order.id)).map(({ lotId, lineId, units }) =>
          moved(units, stagedFor(lotId, lineId), lotAt(lotId, placeId)),
        ),
      );
    }
    const subjects = order.openLines.map((id) => ({ kind: 'line' as const, id }));
    const entryId = await postEntry(
      context,
      {
        kind: 'return',
        happenedOn: input.happenedOn,
        note: input.note,
        details: cancelling.written({ orderId: order.id, cancels: true }),
        subjects,
      },
      returned,
    );
    await setState(context, order.id, 'cancelled');
    for (const lineId of order.openLines) context.touched.line(lineId);
    context.touched.features.add('gardens');
    return { orderId: order.id, entryId };
  },
});
