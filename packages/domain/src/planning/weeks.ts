import { type CalendarDate, fromDayNumber, toDayNumber } from '../kernel/dates.ts';

/** The weeks a plan looks ahead: two years, since a plant sown outdoors in autumn may be wanted in the autumn after next. */
export const PLAN_WEEKS = 104;

/** The Monday on or before a day (ISO 8601 weeks). 1970-01-01, day number 0, was a Thursday. */
export function weekStart(on: CalendarDate): CalendarDate {
  const day = toDayNumber(on);
  return fromDayNumber(day - ((((day + 3) % 7) + 7) % 7));
}

/** Which week of those that begin on the Monday `firstOn` holds a day: 0 is the first, negative lies before. */
export const weekOf = (firstOn: CalendarDate, on: CalendarDate): number =>
  Math.floor((toDayNumber(on) - toDayNumber(firstOn)) / 7);

/** The Monday of a week counted from the first. */
export const mondayOf = (firstOn: CalendarDate, week: number): CalendarDate =>
  fromDayNumber(toDayNumber(firstOn) + 7 * week);
