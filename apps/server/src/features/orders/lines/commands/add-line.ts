import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadOpenOrder } from '../../orders/store.ts';
import { checkLines } from '../check-lines.ts';
import { insertLines } from '../store.ts';

export const addLine = command({
  name: 'addLine',
  input: orders.addLine,
  roles: GROWERS,
  run: async (context, { orderId, ...line }) => {
    const order = await loadOpenOrder(context, orderId);
    await insertLines(context, orderId, await checkLines(context, order, [{ ...line, kit: null }], () => ''));
    context.touched.line(line.lineId);
    return { lineId: line.lineId };
  },
});
