import { type Page, promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { orderConditions, readOrderRows } from './reads.ts';

export const listOrders = query({
  name: 'listOrders',
  input: promises.listOrders,
  roles: EVERYONE,
  read: async (context, input): Promise<Page<promises.OrderRow>> => {
    const { rows, total } = await readOrderRows(context, orderConditions(context, input), input);
    return { rows, total, page: input.page, perPage: input.perPage };
  },
});
