import { orders } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { checkKitInput } from '../check-components.ts';
import { kitEdits, loadKit, updateKit } from '../store.ts';

export const editKit = editing({
  name: 'editKit',
  input: orders.editKit,
  roles: GROWERS,
  edits: kitEdits,
  run: async (context, input) => {
    await loadKit(context, input.kitId);
    await checkKitInput(context, input);
    await updateKit(context, input);
    context.touched.features.add('orders');
    return { kitId: input.kitId };
  },
});
