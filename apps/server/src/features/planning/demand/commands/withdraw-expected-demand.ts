import { planning } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { loadDemand, setWithdrawn } from '../store.ts';

/** Batches that were started for it go on: they are supply for whoever needs them. */
export const withdrawExpectedDemand = command({
  name: 'withdrawExpectedDemand',
  input: planning.withdrawExpectedDemand,
  roles: GROWERS,
  run: async (context, { demandId }) => {
    const { isWithdrawn } = await loadDemand(context, demandId);
    if (isWithdrawn) refuse('demand-withdrawn', undefined, 'demandId');
    await setWithdrawn(context, demandId);
    context.touched.features.add('planning');
    return { demandId };
  },
});
