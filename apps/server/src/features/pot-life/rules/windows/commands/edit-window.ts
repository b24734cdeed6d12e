import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../../refusal.ts';
import { editing } from '../../../../../trpc/editing.ts';
import { clocksChanged } from '../../../../plants/store.ts';
import { windowOf } from '../draft.ts';
import { hasTwin, loadWindow, updateWindow, windowEdits } from '../store.ts';

const TERMS = ['opensMd', 'closesMd', 'maxContainerMl', 'region'] as const;

export const editWindow = editing({
  name: 'editWindow',
  input: potLife.editWindow,
  roles: GROWERS,
  edits: windowEdits,
  run: async (context, input) => {
    const before = await loadWindow(context, input.windowId);
    const window = windowOf(input);
    if (await hasTwin(context, window))
      refuse('window-exists', { opensMd: window.opensMd, closesMd: window.closesMd }, 'opensMd');
    // A note alone leaves the window on the word it stood on.
    await updateWindow(context, window, {
      note: input.note,
      isOwn: TERMS.some((term) => input[term] !== before[term]),
    });
    context.touched.features.add('pot-life');
    await clocksChanged(context);
    return { windowId: window.id };
  },
});
