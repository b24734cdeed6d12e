import { planning } from '@rootclock/contracts';
import { EVERYONE, type Task, TASK_KINDS } from '@rootclock/domain';
import { query } from '../../../trpc/operation.ts';
import { type LoadedTasks, loadTasks } from './load.ts';

/** B2 comes before B10. */
const byCode = new Intl.Collator('en', { numeric: true });

/** What is to be done, as it is walked: what is overdue first, then day by day and place by place. */
export const listTasks = query({
  name: 'listTasks',
  isHeavy: true,
  input: planning.listTasks,
  roles: EVERYONE,
  read: async (context, { from, until, placeId, kinds, page, perPage }): Promise<planning.TaskList> => {
    const { today } = context;
    const loaded = await loadTasks(context, from, until);
    const within = placeId ? placesWithin(loaded.places, placeId) : null;
    const there = loaded.tasks.filter((task) => within === null || task.placeIds.some((id) => within.has(id)));
    const wanted = inOrder(
      there.filter(({ kind }) => kinds.length === 0 || kinds.includes(kind)),
      loaded,
      today,
    );
    return {
      rows: wanted.slice((page - 1) * perPage, page * perPage).map((task) => taskRow(task, loaded, today)),
      total: wanted.length,
      page,
      perPage,
      today,
      overdue: wanted.filter((task) => isOverdue(task, today)).length,
      kinds: TASK_KINDS.map((kind) => ({
        kind,
        tasks: there.filter((task) => task.kind === kind && task.doneOn === null).length,
      })).filter(({ tasks }) => tasks > 0),
    };
  },
});

const isOverdue = ({ doneOn, dueOn }: Pick<Task, 'doneOn' | 'dueOn'>, today: string): boolean =>
  doneOn === null && dueOn < today;

export function taskRow(
  { placeIds, ...task }: Task,
  { places, tickedBy }: LoadedTasks,
  today: string,
): planning.TaskRow {
  return {
    ...task,
    places: placeIds
      .flatMap((id) => places.get(id) ?? [])
      .map(({ id, code, name }) => ({ placeId: id, code, name }))
      .sort((a, b) => byCode.compare(a.code, b.code)),
    isOverdue: isOverdue(task, today),
    isLate: task.doneOn === null && task.lateOn !== null && task.lateOn < today,
    doneBy: task.doneOn === null ? null : (tickedBy.get(task.key) ?? null),
  };
}

/** Tasks arrive by day, kind and code; what belongs nowhere comes after the places of its day. Places are put in order once and not at each comparison. */
function inOrder(tasks: readonly Task[], { places }: LoadedTasks, today: string): Task[] {
  const rank = new Map(
    [...places.values()].sort((a, b) => byCode.compare(a.code, b.code)).map(({ id }, at) => [id, at]),
  );
  const keyed = tasks.map((task) => ({
    task,
    overdue: isOverdue(task, today) ? 0 : 1,
    place: Math.min(...task.placeIds.map((id) => rank.get(id) ?? rank.size), rank.size),
  }));
  keyed.sort(
    (a, b) =>
      a.overdue - b.overdue ||
      (a.task.dueOn === b.task.dueOn ? a.place - b.place : a.task.dueOn < b.task.dueOn ? -1 : 1),
  );
  return keyed.map(({ task }) => task);
}

/** The place and all that lies in it. */
function placesWithin(places: LoadedTasks['places'], placeId: string): Set<string> {
  const within = new Set([placeId]);
  for (let grew = true; grew;) {
    const before = within.size;
    for (const place of places.values())
      if (place.parentId !== null && within.has(place.parentId)) within.add(place.id);
    grew = within.size > before;
  }
  return within;
}
