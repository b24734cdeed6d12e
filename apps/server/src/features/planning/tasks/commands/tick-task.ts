import { planning } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { command } from '../../../../trpc/operation.ts';
import { requirePast, requireSince } from '../../../stock/ledger/post.ts';
import { findTask } from '../find-task.ts';
import { insertTick, loadTick } from '../store.ts';

/** It is done, though no entry of the ledger says so. Ticking what is ticked already changes nothing: two people may have seen that it was done. */
export const tickTask = command({
  name: 'tickTask',
  input: planning.tickTask,
  roles: FIELD,
  run: async (context, { key, doneOn, note }) => {
    const tick = await loadTick(context, key);
    if (tick?.isStanding) return { key, doneOn: tick.doneOn };
    const task = await findTask(context, key);
    if (task.endsBy !== 'tick') refuse('task-ends-by-entry', { kind: task.kind, of: task.subject.code }, 'key');
    requirePast(context, doneOn, 'doneOn');
    requireSince(doneOn, task.earliestOn, 'doneOn');
    await insertTick(context, key, doneOn, note);
    return { key, doneOn };
  },
});
