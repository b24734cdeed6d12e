import { orders } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadKits } from './store.ts';

export const listKits = query({
  name: 'listKits',
  input: orders.listKits,
  roles: EVERYONE,
  read: async (context): Promise<orders.KitRow[]> => {
    const kits = await loadKits(context);
    return kits.map(({ id, edition, name, note, components }) => ({ id, edition, name, note, components }));
  },
});
