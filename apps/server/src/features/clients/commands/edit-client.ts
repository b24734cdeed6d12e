import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../trpc/editing.ts';
import { clientEdits, loadClient, updateClient } from '../store.ts';

export const editClient = editing({
  name: 'editClient',
  input: clients.editClient,
  roles: GROWERS,
  edits: clientEdits,
  run: async (context, input) => {
    const before = await loadClient(context, input.clientId);
    await updateClient(context, input);
    context.touched.features.add('clients');
    if (before.leadDays !== input.leadDays) context.touched.clients.add(input.clientId);
    return { clientId: input.clientId };
  },
});
