import { promises } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { dayEdits, loadOpenOrder, setDay } from '../../../orders/orders/store.ts';
import { loadScope } from '../../allocation/load.ts';
import { settleTurn } from '../turn.ts';

export const changeDay = editing({
  name: 'changeDay',
  input: promises.changeDay,
  roles: GROWERS,
  edits: dayEdits,
  run: async (context, { orderId, dueOn, ...wish }) => {
    const order = await loadOpenOrder(context, orderId);
    const scope = await loadScope(context, { lines: order.openLines });
    const { keepsRank } = await settleTurn(
      context,
      scope,
      new Map(order.openLines.map((lineId) => [lineId, { dueOn }])),
      wish,
    );
    await setDay(context, orderId, dueOn);
    for (const lineId of order.openLines) context.touched.line(lineId);
    context.touched.features.add('orders');
    return { orderId, dueOn, keepsRank };
  },
});
