import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadClient } from '../../clients/store.ts';
import { insertBed, loadSite } from '../store.ts';

export const addBed = command({
  name: 'addBed',
  input: gardens.addBed,
  roles: GROWERS,
  run: async (context, input) => {
    const site = await loadSite(context, input.siteId);
    await loadClient(context, site.clientId);
    await insertBed(context, input);
    context.touched.features.add('gardens');
    return { bedId: input.bedId };
  },
});
