import { clients } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../trpc/editing.ts';
import { loadClient, loadSite, siteEdits, updateSite } from '../store.ts';

export const editSite = editing({
  name: 'editSite',
  input: clients.editSite,
  roles: GROWERS,
  edits: siteEdits,
  run: async (context, input) => {
    const before = await loadSite(context, input.siteId);
    await loadClient(context, before.clientId);
    await updateSite(context, input);
    context.touched.features.add('clients');
    if (before.region !== (input.region ?? null)) context.touched.sites.add(input.siteId);
    return { siteId: input.siteId };
  },
});
