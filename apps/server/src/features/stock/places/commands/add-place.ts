import { stock } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { describePlace } from '../describe.ts';
import { insertPlace } from '../store.ts';

export const addPlace = command({
  name: 'addPlace',
  input: stock.addPlace,
  roles: GROWERS,
  run: async (context, input) => {
    await insertPlace(context, input.placeId, await describePlace(context, input));
    return { placeId: input.placeId };
  },
});
