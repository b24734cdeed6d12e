import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadPlace, setPlaceRetired } from '../store.ts';

/** Takes a retirement back, unless the place it lies in is given up too. */
export const restorePlace = command({
  name: 'restorePlace',
  input: stock.restorePlace,
  roles: GROWERS,
  run: async (context, { placeId }) => {
    const place = await loadPlace(context, placeId);
    const parent = place.parentId ? await loadPlace(context, place.parentId) : null;
    if (parent?.retired) refuse('place-retired', { place: parent.code }, 'placeId');
    await setPlaceRetired(context, placeId, null);
    return { placeId };
  },
});
