import { stock } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../../trpc/operation.ts';
import { loadLot } from '../store.ts';
import { ENTRIES_SHOWN } from './read-lot.ts';
import { loadLotEntries } from './reads.ts';

export const readLotEntries = query({
  name: 'readLotEntries',
  input: stock.readLotEntries,
  roles: EVERYONE,
  read: async (context, { lotId, before }) => {
    await loadLot(context, lotId);
    const entries = await loadLotEntries(context, lotId, before, ENTRIES_SHOWN + 1);
    return { entries: entries.slice(0, ENTRIES_SHOWN), moreEntries: entries.length > ENTRIES_SHOWN };
  },
});
