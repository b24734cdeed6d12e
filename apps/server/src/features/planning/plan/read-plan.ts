import { planning } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { queryThen } from '../../../trpc/operation.ts';
import { type LoadedPlan, loadPlan } from '../facts/load-plan.ts';
import { planAnswer } from './answer.ts';
import { planner } from './solver/planner.ts';

/** What to start. Everything is read first; the reckoning follows in a thread of its own, when the transaction has ended. */
export const readPlan = queryThen({
  name: 'readPlan',
  isHeavy: true,
  input: planning.readPlan,
  roles: EVERYONE,
  read: (context, { confidence }): Promise<LoadedPlan> => loadPlan(context, confidence),
  after: async (loaded: LoadedPlan): Promise<planning.PlanAnswer> =>
    planAnswer(loaded, await planner.ask(loaded.facts)),
});
