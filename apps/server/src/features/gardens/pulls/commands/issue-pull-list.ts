import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadOpenOrder, setPullIssued } from '../../../orders/orders/store.ts';
import { pinLotsOf } from '../../../promises/reservations/store.ts';

/** Ties what is reserved from lots to the order, so that the list stays true while the crew walks it. Issued again it takes in what came since. */
export const issuePullList = command({
  name: 'issuePullList',
  input: gardens.issuePullList,
  roles: GROWERS,
  run: async (context, input) => {
    const order = await loadOpenOrder(context, input.orderId);
    const pinnedUnits = await pinLotsOf(context, order.openLines);
    await setPullIssued(context, order.id);
    for (const lineId of order.openLines) context.touched.line(lineId);
    context.touched.features.add('gardens').add('promises');
    return { orderId: order.id, pinnedUnits };
  },
});
