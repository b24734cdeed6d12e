import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { requireRegion } from '../natives.ts';
import { loadOrder, orderEdits, updateOrder } from '../store.ts';

export const editOrder = editing({
  name: 'editOrder',
  input: orders.editOrder,
  roles: GROWERS,
  edits: orderEdits,
  run: async (context, input) => {
    const order = await loadOrder(context, input.orderId);
    const nativesOnly = input.nativesOnly ?? order.nativesOnly;
    if (nativesOnly && !order.nativesOnly) requireRegion(order);
    await updateOrder(context, input.orderId, { note: input.note, nativesOnly });
    context.touched.features.add('orders');
    if (nativesOnly !== order.nativesOnly) for (const lineId of order.openLines) context.touched.line(lineId);
    return { orderId: input.orderId };
  },
});
