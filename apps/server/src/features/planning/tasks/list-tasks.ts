import { planning } from '@rootclock/contracts';
import { EVERYONE, type Task, TASK_KINDS } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { type LoadedTasks, loadTasks } from './load.ts';

/** B2 comes before B10. */
const byCode = new Intl.Collator('en', { numeric: true });

/** What is to be done, as it is walked: what is overdue first, then day by day and place by place. */
export const listTasks = query({
  name: 'listTasks',
  input: planning.listTasks,
  roles: EVERYONE,
  read: async (context, { from, until, placeId, kinds, page, perPage }): Promise<planning.TaskList> => {
    const { today } = context;
    const loaded = await loadTasks(context, from, until);
    const within = placeId ? placesWithin(loaded.places, placeId) : null;
    const there = loaded.tasks.filter((task) => within === null || task.placeIds.some((id) => within.has(id)));
    const wanted = there.filter(({ kind }) => kinds.length === 0 || kinds.includes(kind)).map((task) => taskRow(task, loaded, today)).sort(inOrder);
    return {
      rows: wanted.slice((page - 1) * perPage, page * perPage), total: wanted.length, page, perPage, today,
      overdue: wanted.filter(({ isOverdue }) => isOverdue).length,
      kinds: TASK_KINDS.map((kind) => ({ kind, tasks: there.filter((task) => task.kind === kind && task.doneOn === null).length })).filter(({ tasks }) => tasks > 0),
    };
  },
});

export function taskRow({ placeIds, ...task }: Task, { places, tickedBy }: LoadedTasks, today: string): planning.TaskRow {
  return {
    ...task,
    places: placeIds.flatMap((id) => places.get(id) ?? []).map(({ id, code, name }) => ({ placeId: id, code, name })).sort((a, b) => byCode.compare(a.code, b.code)),
    isOverdue: task.doneOn === null && task.dueOn < today,
    isLate: task.doneOn === null && task.lateOn !== null && task.lateOn < today,
    doneBy: task.doneOn === null ? null : (tickedBy.get(task.key) ?? null),
  };
}

/** Tasks arrive by day, kind and code; what belongs nowhere comes after the places of its day, and what is done at the end of it. */
function inOrder(a: planning.TaskRow, b: planning.TaskRow): number {
  if (a.isOverdue !== b.isOverdue) return a.isOverdue ? -1 : 1;
  if (a.dueOn !== b.dueOn) return a.dueOn < b.dueOn ? -1 : 1;
  const [here, there] = [a.places[0]?.code, b.places[0]?.code];
  if (here === undefined || there === undefined) return Number(here === undefined) - Number(there === undefined);
  return byCode.compare(here, there);
}

/** The place and all that lies in it. */
function placesWithin(places: LoadedTasks['places'], placeId: string): Set<string> {
  const within = new Set([placeId]);
  for (let grew = true; grew; ) {
    const before = within.size;
    for (const place of places.values()) if (place.parentId !== null && within.has(place.parentId)) within.add(place.id);
    grew = within.size > before;
  }
  return within;
}
