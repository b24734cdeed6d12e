import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { insertBed, loadClient, loadSite } from '../store.ts';

export const addBed = command({
  name: 'addBed',
  input: clients.addBed,
  roles: GROWERS,
  run: async (context, input) => {
    const site = await loadSite(context, input.siteId);
    await loadClient(context, site.clientId);
    await insertBed(context, input);
    context.touched.features.add('clients');
    return { bedId: input.bedId };
  },
});
