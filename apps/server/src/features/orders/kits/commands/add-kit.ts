import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { checkKitInput } from '../check-components.ts';
import { insertKit } from '../store.ts';

export const addKit = command({
  name: 'addKit',
  input: orders.addKit,
  roles: GROWERS,
  run: async (context, input) => {
    await checkKitInput(context, input);
    if (!(await insertKit(context, input))) refuse('id-taken', { what: 'kit' }, 'kitId');
    context.touched.features.add('orders');
    return { kitId: input.kitId };
  },
});
