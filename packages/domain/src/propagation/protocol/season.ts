import { addDays, type CalendarDate, dateParts, daysInMonth } from '../../kernel/dates.ts';
import { monthDayIn, nextMonthDay } from '../../kernel/month-days.ts';
import type { StageSeason } from './stages.ts';

/** Whether a stage may begin on a day. */
export function isInSeason({ fromMd, toMd }: StageSeason, on: CalendarDate): boolean {
  const { year } = dateParts(on);
  const from = monthDayIn(year, fromMd);
  const to = monthDayIn(year, toMd);
  return from <= to ? on >= from && on <= to : on >= from || on <= to;
}

/** The first day on or after `on` on which the stage may begin. */
export function nextInSeason(season: StageSeason | null, on: CalendarDate): CalendarDate {
  return season === null || isInSeason(season, on) ? on : nextMonthDay(on, season.fromMd);
}

/** The last day on or before `on` on which the stage may begin. */
export function lastInSeason(season: StageSeason | null, on: CalendarDate): CalendarDate {
  if (season === null || isInSeason(season, on)) return on;
  const { year } = dateParts(on);
  const thisYear = monthDayIn(year, season.toMd);
  return thisYear <= on ? thisYear : monthDayIn(year - 1, season.toMd);
}

/** The day on which `days` days of headway have been made since `from`; dormant days make none. Goes month by month, since schedules are made by the thousand. */
export function afterGrowing(from: CalendarDate, days: number, dormantMonths: readonly number[]): CalendarDate {
  if (dormantMonths.length === 0) return addDays(from, days);
  let on = from;
  for (let left = days; left > 0;) {
    const { year, month, day } = dateParts(on);
    const ofMonth = daysInMonth(year, month) - day + 1;
    const passed = dormantMonths.includes(month) ? ofMonth : Math.min(left, ofMonth);
    if (!dormantMonths.includes(month)) left -= passed;
    on = addDays(on, passed);
  }
  return on;
}

/** The last day from which `days` days of headway have been made by `until`: the counterpart of afterGrowing. */
export function beforeGrowing(until: CalendarDate, days: number, dormantMonths: readonly number[]): CalendarDate {
  if (dormantMonths.length === 0) return addDays(until, -days);
  let on = until;
  for (let left = days; left > 0;) {
    // The day before `on`, and those of its month before it.
    const { month, day: ofMonth } = dateParts(addDays(on, -1));
    const passed = dormantMonths.includes(month) ? ofMonth : Math.min(left, ofMonth);
    if (!dormantMonths.includes(month)) left -= passed;
    on = addDays(on, -passed);
  }
  return on;
}
