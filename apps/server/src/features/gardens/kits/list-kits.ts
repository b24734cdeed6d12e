import { gardens } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadKits, type StoredKit } from './store.ts';

export const listKits = query({
  name: 'listKits',
  input: gardens.listKits,
  roles: EVERYONE,
  read: async (context): Promise<gardens.KitRow[]> => (await loadKits(context)).map(({ id, name, note, components }: StoredKit) => ({ id, name, note, components: components.map(({ cells: _, ...component }) => component) })),
});
