import { TASK_KINDS, type TaskKind } from './kinds.ts';

/**
 * The name of one task, the same whenever it is reckoned: its kind, what it is about, and its turn, which tells it from the same task at another
 * time: the year for a place's yearly work, the stage for a batch's, a day for what comes again and again. A day that moves by a little
 * because the schedule did is no new task.
 */
export const taskKey = (kind: TaskKind, subjectId: string, turn: string): string => `${kind}/${subjectId}/${turn}`;

const KEY_FORM = /^([a-z-]+)\/[0-9a-z-]+\/[0-9a-z-]+$/i;

/** Whether a text has the form of a task's name; whether there is such a task is another question. */
export function isTaskKey(text: string): boolean {
  const kind = KEY_FORM.exec(text)?.[1];
  return TASK_KINDS.some((known) => known === kind);
}
