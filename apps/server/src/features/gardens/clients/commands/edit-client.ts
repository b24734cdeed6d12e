import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../trpc/editing.ts';
import { clientEdits, loadClient, openLinesOfClient, updateClient } from '../store.ts';

export const editClient = editing({
  name: 'editClient',
  input: gardens.editClient,
  roles: GROWERS,
  edits: clientEdits,
  run: async (context, input) => {
    const before = await loadClient(context, input.clientId);
    await updateClient(context, input);
    context.touched.features.add('gardens');
    if (before.leadDays !== input.leadDays)
      for (const lineId of await openLinesOfClient(context, input.clientId)) context.touched.line(lineId);
    return { clientId: input.clientId };
  },
});
