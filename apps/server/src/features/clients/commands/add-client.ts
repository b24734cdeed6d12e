import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { insertClient } from '../store.ts';

export const addClient = command({
  name: 'addClient',
  input: clients.addClient,
  roles: GROWERS,
  run: async (context, input) => {
    await insertClient(context, input);
    context.touched.features.add('clients');
    return { clientId: input.clientId };
  },
});
