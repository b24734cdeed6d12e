import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import { editing } from '../../../trpc/editing.ts';
import { bedEdits, loadBeds, loadClient, updateBed } from '../store.ts';

export const editBed = editing({
  name: 'editBed',
  input: clients.editBed,
  roles: GROWERS,
  edits: bedEdits,
  run: async (context, input) => {
    const bed = found((await loadBeds(context, [input.bedId])).get(input.bedId), 'bed', 'bedId');
    await loadClient(context, bed.clientId);
    await updateBed(context, input);
    context.touched.features.add('clients');
    return { bedId: input.bedId };
  },
});
