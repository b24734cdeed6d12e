import { potLife } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../../trpc/operation.ts';
import { clocksChanged } from '../../../../plants/store.ts';
import { storeFreezeDay } from '../store.ts';

export const setFreezeDay = command({
  name: 'setFreezeDay',
  input: potLife.setFreezeDay,
  roles: GROWERS,
  run: async (context, { freezeMd }) => {
    await storeFreezeDay(context, freezeMd);
    context.touched.features.add('pot-life').add('people');
    await clocksChanged(context);
    return { freezeMd };
  },
});
