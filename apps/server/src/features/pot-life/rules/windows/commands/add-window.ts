import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../../refusal.ts';
import { command } from '../../../../../trpc/operation.ts';
import { clocksChanged } from '../../../../plants/store.ts';
import { windowOf } from '../draft.ts';
import { hasTwin, insertWindow } from '../store.ts';

export const addWindow = command({
  name: 'addWindow',
  input: potLife.addWindow,
  roles: GROWERS,
  run: async (context, input) => {
    const window = windowOf(input);
    if (await hasTwin(context, window))
      refuse('window-exists', { opensMd: window.opensMd, closesMd: window.closesMd }, 'opensMd');
    if (!(await insertWindow(context, window, input.note))) refuse('id-taken', { what: 'window' }, 'windowId');
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { windowId: window.id };
  },
});
