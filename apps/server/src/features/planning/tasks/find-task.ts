import { addDays, type Task } from '@rootclock/domain';
import { found } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadTasks } from './load.ts';

/** Tasks are named up to so long ahead and back, so that what was done early, or is written down late, still finds its task. */
const REACH_DAYS = 400;

/** The task that a key names today; a key that names none of this nursery's answers as not found. */
export async function findTask(context: ReadContext, key: string): Promise<Task> {
  const { tasks } = await loadTasks(context, addDays(context.today, -REACH_DAYS), addDays(context.today, REACH_DAYS));
  return found(
    tasks.find((task) => task.key === key),
    'task',
    'key',
  );
}
