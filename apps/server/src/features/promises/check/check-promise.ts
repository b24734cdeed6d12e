import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { queryThen } from '../../../trpc/operation.ts';
import { askedLine } from '../offers/asked-line.ts';
import { solver } from '../solving/solver.ts';
import { answerCheck, type AskedCheck } from './answer-check.ts';
import { loadKin } from './store.ts';

/** Whether somebody can be promised so many plants for a day: how many without shortening anybody, from what, what stands in the way and what else would do. */
export const checkPromise = queryThen({
  name: 'checkPromise',
  isHeavy: true,
  input: promises.checkPromise,
  roles: EVERYONE,
  read: async (context, input): Promise<AskedCheck> => {
    const kin = await loadKin(context, input.plantId, input.containerId);
    const { scope, line: wish } = await askedLine(context, input, {
      units: input.units,
      alternatives: input.alternatives,
      looksAt: kin,
    });
    return { scope, wish, kin };
  },
  after: (asked): Promise<promises.PromiseCheck> => solver.reckon('check', asked.scope, asked, answerCheck),
});
