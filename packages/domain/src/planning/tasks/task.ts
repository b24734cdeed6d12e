import type { CalendarDate } from '../../kernel/dates.ts';
import type { BatchUnit } from '../../propagation/words.ts';
import type { TaskDetails } from './facts.ts';
import { taskKey } from './key.ts';
import type { TaskEnding, TaskKind, TaskSubjectKind } from './kinds.ts';

/** Something to do on a day, at some places, about one thing. */
export interface Task {
  /** See taskKey: the same whenever the task is reckoned. */
  key: string;
  kind: TaskKind;
  dueOn: CalendarDate;
  /** The last day on which it is not late; null where there is no such day. */
  lateOn: CalendarDate | null;
  endsBy: TaskEnding;
  /** The first day on which it can have been done. */
  earliestOn: CalendarDate;
  /** The day it was ticked; null while it is open. */
  doneOn: CalendarDate | null;
  subject: { kind: TaskSubjectKind; id: string; code: string };
  /** The plant's scientific name, where it is about one. */
  plantName: string | null;
  placeIds: readonly string[];
  units: number | null;
  unit: BatchUnit | 'plant' | null;
  details: TaskDetails;
}

type About = Pick<Task, 'kind' | 'subject' | 'dueOn' | 'endsBy' | 'earliestOn'> & { turn: string };

/** A task that is open, with what is not said left empty. */
export const openTask = (
  { turn, ...about }: About,
  rest: Partial<Pick<Task, 'lateOn' | 'plantName' | 'placeIds' | 'units' | 'unit' | 'details'>> = {},
): Task => ({
  key: taskKey(about.kind, about.subject.id, turn),
  lateOn: null,
  doneOn: null,
  plantName: null,
  placeIds: [],
  units: null,
  unit: null,
  details: {},
  ...about,
  ...rest,
});
