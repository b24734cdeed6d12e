import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { checkKitInput } from '../check-components.ts';
import { kitEdits, loadKit, updateKit } from '../store.ts';

export const editKit = editing({
  name: 'editKit',
  input: gardens.editKit,
  roles: GROWERS,
  edits: kitEdits,
  run: async (context, input) => {
    await loadKit(context, input.kitId);
    await checkKitInput(context, input);
    await updateKit(context, input);
    context.touched.features.add('gardens');
    return { kitId: input.kitId };
  },
});
