import { stock } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadLot } from '../lots/store.ts';
import { loadLivingRates, loadWinterDays, type LivingRates } from './rates.ts';

/** Apart from the lot's page, since it reads the ledger of all lots of the plant. */
export const readLivingRates = query({
  name: 'readLivingRates',
  input: stock.readLivingRates,
  roles: EVERYONE,
  read: async (context, { lotId }) => {
    const lot = await loadLot(context, lotId);
    const [rates] = await loadLivingRates(context, [lot.plantId]);
    return { ...(rates as LivingRates), winter: await loadWinterDays(context) };
  },
});
