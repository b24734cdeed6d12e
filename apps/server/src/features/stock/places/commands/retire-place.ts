import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadPlace, loadStanding, setPlaceRetired } from '../store.ts';

/** A place that is given up is no longer offered; what happened there stays readable. */
export const retirePlace = command({
  name: 'retirePlace',
  input: stock.retirePlace,
  roles: GROWERS,
  run: async (context, { placeId }) => {
    const place = await loadPlace(context, placeId);
    const { units, lotIds, batchIds, places } = await loadStanding(context, place.id);
    if (units > 0)
      refuse('place-not-empty', { place: place.code, units, lots: lotIds.length, batches: batchIds.length }, 'placeId');
    if (places > 0) refuse('place-has-places', { place: place.code, places }, 'placeId');
    if (!place.retired) await setPlaceRetired(context, place.id, context.now);
    return { placeId };
  },
});
