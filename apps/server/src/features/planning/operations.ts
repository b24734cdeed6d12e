import { tickTask } from './tasks/commands/tick-task.ts';
import { untickTask } from './tasks/commands/untick-task.ts';
import { listTasks } from './tasks/list-tasks.ts';

export const planningOperations = { listTasks, tickTask, untickTask };
