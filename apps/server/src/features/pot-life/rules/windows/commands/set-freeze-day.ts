import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { editing } from '../../../../../trpc/editing.ts';
import { clocksChanged } from '../../../../plants/store.ts';
import { freezeDayEdits, storeFreezeDay } from '../store.ts';

export const setFreezeDay = editing({
  name: 'setFreezeDay',
  input: potLife.setFreezeDay,
  roles: GROWERS,
  edits: freezeDayEdits,
  run: async (context, { freezeMd }) => {
    await storeFreezeDay(context, freezeMd);
    context.touched.features.add('pot-life').add('people');
    await clocksChanged(context);
    return { freezeMd };
  },
});
