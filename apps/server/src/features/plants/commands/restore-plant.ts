import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../trpc/operation.ts';
import { loadPlant, markRetired } from '../store.ts';

/** Takes a retired plant back: it is offered again everywhere. */
export const restorePlant = command({
  name: 'restorePlant',
  input: plants.restorePlant,
  roles: GROWERS,
  run: async (context, { plantId }) => {
    await loadPlant(context, plantId);
    await markRetired(context, plantId, null);
    context.touched.features.add('plants');
    return { plantId };
  },
});
