import { stock } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadSelection } from '../../lots/selection.ts';
import { treat } from '../treat.ts';

/** All that stands at the place and within it, batches in their trays among them. */
export const treatPlace = command({
  name: 'treatPlace',
  input: stock.treatPlace,
  roles: FIELD,
  run: async (context, { placeId, ...applied }) =>
    treat(context, await loadSelection(context, { placeId }), placeId, applied),
});
