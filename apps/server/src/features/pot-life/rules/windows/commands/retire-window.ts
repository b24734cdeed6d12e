import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { clocksChanged } from '../../../../plants/store.ts';
import { loadWindow, markWindowRetired } from '../store.ts';

export const retireWindow = command({
  name: 'retireWindow',
  input: potLife.retireWindow,
  roles: GROWERS,
  run: async (context, { windowId }) => {
    await loadWindow(context, windowId);
    await markWindowRetired(context, windowId);
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { windowId };
  },
});
