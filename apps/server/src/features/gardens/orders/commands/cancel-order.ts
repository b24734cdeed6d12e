import { gardens } from '@rootclock/contracts';
import { GROWERS, lotAt, moved, stagedFor } from '@rootclock/domain';
import { found, refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { postEntry, requirePast } from '../../../stock/ledger/post.ts';
import { requireOpenPlaces } from '../../../stock/lots/places.ts';
import { loadStaged } from '../../pulls/store.ts';
import { setState } from '../change-store.ts';
import { loadOpenOrder } from '../store.ts';

/** The plants are free again. Reversing the entry that brought pulled plants back opens the order again. */
export const cancelOrder = command({
  name: 'cancelOrder',
  input: gardens.cancelOrder,
  roles: GROWERS,
  run: async (context, input) => {
    const order = await loadOpenOrder(context, input.orderId);
    requirePast(context, input.happenedOn);
    if (order.stagedUnits > 0) {
      if (input.placeId === null) refuse('plants-are-staged', { order: order.code, units: order.stagedUnits }, 'placeId');
      const [place] = await requireOpenPlaces(context, [input.placeId]);
      const { id: placeId } = found(place, 'place', 'placeId');
      const staged = await loadStaged(context, order.id);
      await postEntry(context, { kind: 'return', happenedOn: input.happenedOn, note: input.note, details: { orderId: order.id, cancels: true } },
        staged.map(({ lotId, lineId, units }) => moved(units, stagedFor(lotId, lineId), lotAt(lotId, placeId))));
    }
    await setState(context, order.id, 'cancelled');
    for (const lineId of order.openLines) context.touched.line(lineId);
    context.touched.features.add('gardens');
    return { orderId: order.id };
  },
});
