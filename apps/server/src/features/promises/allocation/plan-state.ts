import { promises } from '@rootclock/contracts';
import { EVERYONE } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { loadPlanState } from './store.ts';

/** Whether promises still wait to be solved after what happened. */
export const planState = query({
  name: 'planState',
  input: promises.planState,
  roles: EVERYONE,
  read: (context): Promise<promises.PlanState> => loadPlanState(context),
});
