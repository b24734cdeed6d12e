import { gardens } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadClient, openLinesOfClient, updateClient } from '../store.ts';

export const editClient = command({
  name: 'editClient',
  input: gardens.editClient,
  roles: GROWERS,
  run: async (context, input) => {
    const before = await loadClient(context, input.clientId);
    await updateClient(context, input);
    context.touched.features.add('gardens');
    if (before.leadDays !== input.leadDays) for (const lineId of await openLinesOfClient(context, input.clientId)) context.touched.line(lineId);
    return { clientId: input.clientId };
  },
});
