import { type CalendarDate, dateOf, dateParts, daysInMonth, requireDate } from './dates.ts';
import { InputError } from './input.ts';

/** A day of every year, 'MM-DD': a freeze day, a window's edge. '02-29' is allowed and falls on 28 Feb in common years. */
export type MonthDay = string;

const MONTH_DAY_FORM = /^(\d{2})-(\d{2})$/;

/** Whether the value is an 'MM-DD' string of a day that exists in a leap year. */
export function isMonthDay(value: unknown): value is MonthDay {
  const match = typeof value === 'string' ? MONTH_DAY_FORM.exec(value) : null;
  if (match === null) return false;
  const month = Number(match[1]);
  const day = Number(match[2]);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(2000, month);
}

/** Returns the day of the year. Throws InputError naming the argument when it does not exist in any year. */
export function requireMonthDay(argument: string, value: unknown): MonthDay {
  if (!isMonthDay(value)) {
    throw new InputError(argument, 'must be a day of the year that exists, written MM-DD', { value: String(value) });
  }
  return value;
}

/** The day of a given year. '02-29' in a common year is its 28 Feb, so that a range never gains a day it did not have. */
export function monthDayIn(year: number, monthDay: MonthDay): CalendarDate {
  requireMonthDay('monthDay', monthDay);
  const month = Number(monthDay.slice(0, 2));
  const day = Number(monthDay.slice(3));
  return dateOf({ year, month, day: Math.min(day, daysInMonth(year, month)) });
}

/** The first day on or after `on` that falls on the given day of the year. On that day itself it is `on`. */
export function nextMonthDay(on: CalendarDate, monthDay: MonthDay): CalendarDate {
  requireDate('on', on);
  const { year } = dateParts(on);
  const thisYear = monthDayIn(year, monthDay);
  return thisYear >= on ? thisYear : monthDayIn(year + 1, monthDay);
}
