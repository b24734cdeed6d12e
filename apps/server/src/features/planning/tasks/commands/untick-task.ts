import { planning } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { command } from '../../../../trpc/operation.ts';
import { findTask } from '../find-task.ts';
import { loadTick, takeTickBack } from '../store.ts';

/** It was not done after all. The tick is kept, with the instant at which it was taken back. */
export const untickTask = command({
  name: 'untickTask',
  input: planning.untickTask,
  roles: FIELD,
  run: async (context, { key }) => {
    const tick = await loadTick(context, key);
    if (!tick) await findTask(context, key);
    else if (tick.isStanding) await takeTickBack(context, tick.id);
    return { key };
  },
});
