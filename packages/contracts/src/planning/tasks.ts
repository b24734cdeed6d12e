import { isTaskKey, type Task, TASK_KINDS, type TaskKind } from '@rootclock/domain';
import * as z from 'zod/mini';
import type { Page } from '../fields.ts';
import { calendarDate, id, longText, page, text } from '../fields.ts';

const key = text(z.maxLength(200), z.refine(isTaskKey, { params: { problem: 'wrong-form' } }));

/** What is due from day to day, both included; with a place, what is done there and at all that lies in it. */
export const listTasks = z
  .strictObject({
    from: calendarDate,
    until: calendarDate,
    placeId: z.optional(z.nullable(id)),
    /** Left out or empty: every kind. */
    kinds: z._default(z.array(z.enum(TASK_KINDS)).check(z.maxLength(TASK_KINDS.length)), []),
    ...page,
  })
  .check(z.refine((input) => input.from <= input.until, { path: ['until'], params: { problem: 'too-small' } }));

export const tickTask = z.strictObject({ key, doneOn: calendarDate, note: z._default(longText, '') });
export const untickTask = z.strictObject({ key });

export interface TaskPlaceRow {
  placeId: string;
  code: string;
  name: string;
}

export interface TaskRow extends Omit<Task, 'placeIds'> {
  /** Where it is done, by code. */
  places: TaskPlaceRow[];
  /** Open, and its day has gone by. */
  isOverdue: boolean;
  /** Past the last day on which it is not late. */
  isLate: boolean;
  /** Who ticked it. */
  doneBy: string | null;
}

export interface TaskList extends Page<TaskRow> {
  today: string;
  /** How many are open and overdue, with the filters as they are. */
  overdue: number;
  /** What the days and the place hold, whatever kinds are asked for, so that a filter offers only what there is. */
  kinds: { kind: TaskKind; tasks: number }[];
}
