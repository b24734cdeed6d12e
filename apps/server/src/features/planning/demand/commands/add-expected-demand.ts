import { planning } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { insertDemand, requireItem } from '../store.ts';
import { wantedDay } from '../wanted-day.ts';

export const addExpectedDemand = command({
  name: 'addExpectedDemand',
  input: planning.addExpectedDemand,
  roles: GROWERS,
  run: async (context, { demandId, wanted, ...input }) => {
    await requireItem(context, input.plantId, input.containerId);
    const wantedOn = wantedDay(wanted, context.today);
    await insertDemand(context, { ...input, id: demandId, wantedOn, unitValueMinor: input.unitValueMinor ?? null });
    context.touched.features.add('planning');
    return { demandId, wantedOn };
  },
});
