import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { loadClient } from '../../clients/store.ts';
import { loadSite, openLinesOfSite, siteEdits, updateSite } from '../store.ts';

export const editSite = editing({
  name: 'editSite',
  input: gardens.editSite,
  roles: GROWERS,
  edits: siteEdits,
  run: async (context, input) => {
    const before = await loadSite(context, input.siteId);
    await loadClient(context, before.clientId);
    await updateSite(context, input);
    context.touched.features.add('gardens');
    if (before.region !== (input.region ?? null))
      for (const lineId of await openLinesOfSite(context, input.siteId)) context.touched.line(lineId);
    return { siteId: input.siteId };
  },
});
