import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';
import { command } from '../../../trpc/operation.ts';
import { countStanding, loadPlant, markRetired } from '../store.ts';

/** A plant the nursery no longer grows: it is offered nowhere, and all that was written about it stays. */
export const retirePlant = command({
  name: 'retirePlant',
  input: plants.retirePlant,
  roles: GROWERS,
  run: async (context, { plantId }) => {
    const plant = await loadPlant(context, plantId);
    const standing = await countStanding(context, plantId);
    if (standing.units > 0 || standing.batches > 0)
      refuse('plant-stands', { plant: plant.scientificName, ...standing });
    await markRetired(context, plantId, context.now);
    context.touched.features.add('plants');
    return { plantId };
  },
});
