import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadOrder, setNote } from '../store.ts';

export const editOrder = command({
  name: 'editOrder',
  input: gardens.editOrder,
  roles: GROWERS,
  run: async (context, input) => {
    await loadOrder(context, input.orderId);
    await setNote(context, input.orderId, input.note);
    context.touched.features.add('gardens');
    return { orderId: input.orderId };
  },
});
