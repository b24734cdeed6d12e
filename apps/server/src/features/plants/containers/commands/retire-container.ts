import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadContainer, markContainerRetired } from '../store.ts';

/** A container that is no longer filled: what stands in it stays there, it is only no longer offered. */
export const retireContainer = command({
  name: 'retireContainer',
  input: plants.retireContainer,
  roles: GROWERS,
  run: async (context, { containerId }) => {
    await loadContainer(context, containerId);
    await markContainerRetired(context, containerId, context.now);
    context.touched.features.add('plants');
    return { containerId };
  },
});
