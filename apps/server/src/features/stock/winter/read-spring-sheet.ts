import { stock } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadLot, loadPlaces, loadStandingAt } from '../lots/store.ts';
import { readSpringRows, type SpringSheetRow } from './reads.ts';

/** Everything that stands is offered: whether a plant died back is easier seen than known. */
export const readSpringSheet = query({
  name: 'readSpringSheet',
  input: stock.readSpringSheet,
  roles: EVERYONE,
  read: async (context, { placeId, lotId }): Promise<SpringSheetRow[]> => {
    if (lotId) return readSpringRows(context, { lotIds: [(await loadLot(context, lotId)).id], placeIds: null });
    const [place] = await loadPlaces(context, placeId ? [placeId] : []);
    const there = place ? await loadStandingAt(context, place.id) : { lotIds: [], placeIds: [] };
    return readSpringRows(context, there);
  },
});
