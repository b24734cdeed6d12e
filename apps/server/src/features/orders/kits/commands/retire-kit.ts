import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadKit, markKitRetired } from '../store.ts';

export const retireKit = command({
  name: 'retireKit',
  input: orders.retireKit,
  roles: GROWERS,
  run: async (context, { kitId }) => {
    await loadKit(context, kitId);
    await markKitRetired(context, kitId);
    context.touched.features.add('orders');
    return { kitId };
  },
});
