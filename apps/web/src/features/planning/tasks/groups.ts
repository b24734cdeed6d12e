/** Tasks as they are walked: what is overdue, then each day, each with its places; what is done stands at the end of all. */
import type { TaskRow } from './task-words.ts';

export interface TaskGroup {
  /** `overdue`, `done`, or the day. */
  key: string;
  places: { key: string; place: TaskRow['places'][number] | null; rows: TaskRow[] }[];
  tasks: number;
}

const groupOf = (task: TaskRow): string => (task.doneOn !== null ? 'done' : task.isOverdue ? 'overdue' : task.dueOn);

/** Keeps the order in which the rows come, but for what is done. */
export function groupTasks(rows: readonly TaskRow[]): TaskGroup[] {
  const groups = new Map<string, TaskGroup>();
  for (const row of [
    ...rows.filter(({ doneOn }) => doneOn === null),
    ...rows.filter(({ doneOn }) => doneOn !== null),
  ]) {
    const key = groupOf(row);
    const group = groups.get(key) ?? { key, places: [], tasks: 0 };
    groups.set(key, group);
    group.tasks += 1;
    const place = row.places[0] ?? null;
    // What is overdue comes from many days, so one place's may stand apart; within the group they are brought together.
    const at = group.places.find((each) => each.key === (place?.placeId ?? ''));
    if (at) at.rows.push(row);
    else group.places.push({ key: place?.placeId ?? '', place, rows: [row] });
  }
  return [...groups.values()];
}
