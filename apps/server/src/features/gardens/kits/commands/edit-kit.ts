import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { checkKitInput } from '../check-components.ts';
import { loadKit, updateKit } from '../store.ts';

export const editKit = command({
  name: 'editKit',
  input: gardens.editKit,
  roles: GROWERS,
  run: async (context, input) => {
    await loadKit(context, input.kitId);
    await checkKitInput(context, input);
    await updateKit(context, input);
    context.touched.features.add('gardens');
    return { kitId: input.kitId };
  },
});
