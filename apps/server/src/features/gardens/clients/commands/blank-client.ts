import { gardens } from '@rootclock/contracts';
import { OWNER } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { blankClientData, loadClient, sitesOf } from '../../../clients/store.ts';
import { blankFilesOf } from '../../../files/blanking.ts';
import { blankOrdersOf } from '../../../orders/orders/store.ts';
import { openOrdersOf } from '../store.ts';

/** Nobody could plant or hand over what stays open for a client without a name, so open orders are settled first. */
export const blankClient = command({
  name: 'blankClient',
  input: gardens.blankClient,
  roles: OWNER,
  run: async (context, input) => {
    await loadClient(context, input.clientId);
    const open = await openOrdersOf(context, input.clientId);
    if (open.length > 0) refuse('orders-are-open', { orders: open });
    await blankOrdersOf(context, input.clientId);
    await blankClientData(context, input.clientId);
    await blankFilesOf(context, await sitesOf(context, input.clientId));
    context.touched.features.add('clients');
    return { clientId: input.clientId };
  },
});
