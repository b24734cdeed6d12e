import { addExpectedDemand } from './demand/commands/add-expected-demand.ts';
import { editExpectedDemand } from './demand/commands/edit-expected-demand.ts';
import { withdrawExpectedDemand } from './demand/commands/withdraw-expected-demand.ts';
import { listExpectedDemand } from './demand/reads.ts';
import { readPlan } from './plan/read-plan.ts';
import { readOutlook } from './read-outlook.ts';
import { tickTask } from './tasks/commands/tick-task.ts';
import { untickTask } from './tasks/commands/untick-task.ts';
import { listTasks } from './tasks/list-tasks.ts';

export const planningOperations = {
  addExpectedDemand,
  editExpectedDemand,
  withdrawExpectedDemand,
  listExpectedDemand,
  readPlan,
  readOutlook,
  listTasks,
  tickTask,
  untickTask,
};
