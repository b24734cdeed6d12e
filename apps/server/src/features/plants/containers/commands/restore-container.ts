import { plants } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { loadContainer, markContainerRetired } from '../store.ts';

/** Takes a retired container back: it is offered again everywhere. */
export const restoreContainer = command({
  name: 'restoreContainer',
  input: plants.restoreContainer,
  roles: GROWERS,
  run: async (context, { containerId }) => {
    await loadContainer(context, containerId);
    await markContainerRetired(context, containerId, null);
    context.touched.features.add('plants');
    return { containerId };
  },
});
