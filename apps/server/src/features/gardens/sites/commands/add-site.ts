import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadClient } from '../../clients/store.ts';
import { insertSite } from '../store.ts';

export const addSite = command({
  name: 'addSite',
  input: gardens.addSite,
  roles: GROWERS,
  run: async (context, input) => {
    await loadClient(context, input.clientId);
    await insertSite(context, input);
    context.touched.features.add('gardens');
    return { siteId: input.siteId };
  },
});
