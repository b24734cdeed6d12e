import { planning } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { editing } from '../../../../trpc/editing.ts';
import { demandEdits, loadDemand, requireItem, updateDemand } from '../store.ts';
import { wantedDay } from '../wanted-day.ts';

export const editExpectedDemand = editing({
  name: 'editExpectedDemand',
  input: planning.editExpectedDemand,
  roles: GROWERS,
  edits: demandEdits,
  run: async (context, { demandId, wanted, ...input }) => {
    const stored = await loadDemand(context, demandId);
    if (stored.isWithdrawn) refuse('demand-withdrawn', undefined, 'demandId');
    await requireItem(context, input.plantId, input.containerId);
    // A day that has passed may stay while something else about it is mended.
    const wantedOn = wanted === stored.wantedOn ? wanted : wantedDay(wanted, context.today);
    await updateDemand(context, { ...input, id: demandId, wantedOn, unitValueMinor: input.unitValueMinor ?? null });
    context.touched.features.add('planning');
    return { demandId, wantedOn };
  },
});
