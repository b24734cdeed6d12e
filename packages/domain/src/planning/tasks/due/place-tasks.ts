import { addDays, type CalendarDate, dateParts } from '../../../kernel/dates.ts';
import { type MonthDay, monthDayIn } from '../../../kernel/month-days.ts';
import type { TaskPlace } from '../facts.ts';
import type { TaskKind } from '../kinds.ts';
import { openTask, type Task } from '../task.ts';

/** A winter's work that nobody ticked off for so long is not asked for any more: the season for it has gone by. */
export const PLACE_WORK_LAPSES_DAYS = 60;
/** How long before its day a year's work may be done already. */
const EARLY_DAYS = 182;

/** The yearly work of a place with a day from `PLACE_WORK_LAPSES_DAYS` before `from` to `until`: covering, bait against voles, uncovering. */
export function placeTasks(place: TaskPlace, from: CalendarDate, until: CalendarDate): Task[] {
  const since = addDays(from, -PLACE_WORK_LAPSES_DAYS);
  return [
    ...yearly(place, 'cover', place.coverMd, since, until),
    ...yearly(place, 'vole-bait', place.baitMd, since, until),
    ...yearly(place, 'uncover', place.uncoverMd, since, until),
  ];
}

function yearly(
  place: TaskPlace,
  kind: TaskKind,
  monthDay: MonthDay | null,
  since: CalendarDate,
  until: CalendarDate,
): Task[] {
  if (monthDay === null) return [];
  const tasks: Task[] = [];
  for (let { year } = dateParts(since); year <= dateParts(until).year; year += 1) {
    const dueOn = monthDayIn(year, monthDay);
    if (dueOn < since || dueOn > until) continue;
    tasks.push(
      openTask(
        {
          kind,
          subject: { kind: 'place', id: place.id, code: place.code },
          turn: String(year),
          dueOn,
          endsBy: 'tick',
          earliestOn: addDays(dueOn, -EARLY_DAYS),
        },
        { placeIds: [place.id] },
      ),
    );
  }
  return tasks;
}
