import { orders } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadOpenOrder, setState } from '../store.ts';

/** Nothing more will go out for the order. Plants it still held are free again. */
export const finishOrder = command({
  name: 'finishOrder',
  input: orders.finishOrder,
  roles: FIELD,
  run: async (context, input) => {
    const order = await loadOpenOrder(context, input.orderId);
    if (order.stagedUnits > 0) refuse('plants-are-staged', { order: order.code, units: order.stagedUnits }, 'orderId');
    await setState(context, order.id, 'done');
    for (const lineId of order.openLines) context.touched.line(lineId);
    context.touched.features.add('orders');
    return { orderId: order.id };
  },
});
