import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { insertSite, loadClient } from '../store.ts';

export const addSite = command({
  name: 'addSite',
  input: clients.addSite,
  roles: GROWERS,
  run: async (context, input) => {
    await loadClient(context, input.clientId);
    await insertSite(context, input);
    context.touched.features.add('clients');
    return { siteId: input.siteId };
  },
});
