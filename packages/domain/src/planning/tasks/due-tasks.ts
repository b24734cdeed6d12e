import { type CalendarDate, earliestOf, requireDate } from '../../kernel/dates.ts';
import { InputError } from '../../kernel/input.ts';
import { compareText } from '../../kernel/text.ts';
import { batchTasks } from './due/batch-tasks.ts';
import { followUpTask, hasLapsed, orderTasks } from './due/garden-tasks.ts';
import { leavingTasks, lotTasks, notYetUpTask } from './due/lot-tasks.ts';
import { placeTasks } from './due/place-tasks.ts';
import type { TaskFacts, TaskTest } from './facts.ts';
import { TASK_KINDS, type TaskKind } from './kinds.ts';
import { openTask, type Task } from './task.ts';

const rank = Object.fromEntries(TASK_KINDS.map((kind, at) => [kind, at])) as Record<TaskKind, number>;

/**
 * What is to be done from day to day, both days included, in the order of days and then of TASK_KINDS. Where `from` is not after today, what has been
 * due before and is still open stands first. Tasks with an entry of their own are gone once it is booked; a ticked one stays, with its day, as
 * long as it was due or done since `from`. The order of the facts makes no difference. Throws InputError for days that do not
 * exist or stand in the wrong order, and for protocols that are none.
 */
export function dueTasks(facts: TaskFacts, from: CalendarDate, until: CalendarDate): Task[] {
  requireDate('from', from);
  if (requireDate('until', until) < from) throw new InputError('until', 'must not be before the first day', { from });
  const doneOn = new Map(facts.ticks.map((tick) => [tick.key, tick.doneOn]));
  const holdsOverdue = from <= facts.today;
  const tasks: Task[] = [];
  for (const task of allTasks(facts, from, until)) {
    if (task.dueOn > until) continue;
    if (task.endsBy === 'tick') task.doneOn = doneOn.get(task.key) ?? null;
    if (
      task.dueOn >= from ||
      (task.doneOn === null ? holdsOverdue && !hasLapsed(task, facts.today) : task.doneOn >= from)
    )
      tasks.push(task);
  }
  return tasks.sort(
    (a, b) =>
      compareText(a.dueOn, b.dueOn) ||
      rank[a.kind] - rank[b.kind] ||
      compareText(a.subject.code, b.subject.code) ||
      compareText(a.key, b.key),
  );
}

function allTasks(facts: TaskFacts, from: CalendarDate, until: CalendarDate): Task[] {
  const ofLot = lotTasks();
  return [
    ...facts.batches.flatMap((batch) => [
      ...batchTasks(batch, facts.today),
      ...leavingTasks(batch, facts.today, facts.noticeDays),
    ]),
    ...facts.lots.flatMap((lot) => [...ofLot(lot), ...leavingTasks(lot, facts.today, facts.noticeDays)]),
    ...facts.places.flatMap((place) => placeTasks(place, earliestOf(from, facts.today), until)),
    ...facts.orders.flatMap(orderTasks),
    ...facts.plantings.map(followUpTask),
    ...facts.springCounts.map(notYetUpTask),
    ...facts.tests.map(testTask),
  ];
}

/** Replicates lie further apart than their published tolerance allows, so the test says little until it is repeated. */
const testTask = ({ sourceId, sourceCode, plantName, testedOn }: TaskTest): Task =>
  openTask(
    {
      kind: 'test-to-repeat',
      subject: { kind: 'source', id: sourceId, code: sourceCode },
      turn: testedOn,
      dueOn: testedOn,
      endsBy: 'tick',
      earliestOn: testedOn,
    },
    { plantName, details: { sinceOn: testedOn } },
  );
