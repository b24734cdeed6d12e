import { InputError } from './input.ts';

/**
 * Calendar dates are 'YYYY-MM-DD' strings of the proleptic Gregorian calendar, years 0001 to 9999. All arithmetic is
 * done on whole day numbers: an instant has a time zone and two of them a day can vanish between, a day number cannot.
 * Strings of this form also sort as days, so `<` and `<=` may be used on them directly.
 */
export type CalendarDate = string;

export interface DateParts {
  year: number;
  /** 1 to 12. */
  month: number;
  /** 1 to 31. */
  day: number;
}

const DATE_FORM = /^(\d{4})-(\d{2})-(\d{2})$/;
const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;
const FIRST_YEAR = 1;
const LAST_YEAR = 9999;
/** Days from 1 January of year 1 to 1 January 1970, so that day number 0 is 1970-01-01. */
const EPOCH_DAYS = 719_162;

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days of a month (1 to 12) of a year: 28 to 31. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function readParts(value: unknown): DateParts | null {
  if (typeof value !== 'string') return null;
  const match = DATE_FORM.exec(value);
  if (match === null) return null;
  const year = Number(match[1]);
  const month = Number(match[2]);
  const day = Number(match[3]);
  if (year < FIRST_YEAR || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return { year, month, day };
}

/** Whether the value is a 'YYYY-MM-DD' string of a day that exists. */
export function isCalendarDate(value: unknown): value is CalendarDate {
  return readParts(value) !== null;
}

/** Returns the date. Throws InputError naming the argument when it is no date or a day that does not exist. */
export function requireDate(argument: string, value: unknown): CalendarDate {
  if (!isCalendarDate(value)) {
    throw new InputError(argument, 'must be a day that exists, written YYYY-MM-DD', { value: String(value) });
  }
  return value;
}

/** Year, month and day of a date. Throws InputError when it does not exist. */
export function dateParts(on: CalendarDate, argument = 'on'): DateParts {
  const parts = readParts(on);
  if (parts === null)
    throw new InputError(argument, 'must be a day that exists, written YYYY-MM-DD', { value: String(on) });
  return parts;
}

/** The date of a year, month and day. Throws InputError when there is no such day, or the year leaves 0001 to 9999. */
export function dateOf({ year, month, day }: DateParts): CalendarDate {
  if (year < FIRST_YEAR || year > LAST_YEAR)
    throw new InputError('on', 'must stay within the years 0001 to 9999', { year });
  const exists = Number.isInteger(year) && Number.isInteger(month) && Number.isInteger(day);
  if (!exists || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) {
    throw new InputError('on', 'must be a day that exists', { year, month, day });
  }
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** Whole days since 1970-01-01 (negative before). Throws InputError when the date does not exist. */
export function toDayNumber(on: CalendarDate, argument = 'on'): number {
  const { year, month, day } = dateParts(on, argument);
  const past = year - 1;
  const daysOfYears = past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
  const leapDay = month > 2 && isLeapYear(year) ? 1 : 0;
  return daysOfYears + (DAYS_BEFORE_MONTH[month - 1] ?? 0) + leapDay + day - 1 - EPOCH_DAYS;
}

/** The date of a day number (whole days since 1970-01-01). Throws InputError for a fraction or outside years 1 to 9999. */
export function fromDayNumber(dayNumber: number): CalendarDate {
  if (!Number.isInteger(dayNumber)) throw new InputError('dayNumber', 'must be a whole number of days');
  const days = dayNumber + EPOCH_DAYS;
  // The first guess by the mean length of a year is at most one year off, so one step settles it.
  let year = Math.floor(days / 365.2425) + 1;
  const startOf = (y: number) =>
    (y - 1) * 365 + Math.floor((y - 1) / 4) - Math.floor((y - 1) / 100) + Math.floor((y - 1) / 400);
  if (startOf(year) > days) year -= 1;
  else if (startOf(year + 1) <= days) year += 1;
  let rest = days - startOf(year);
  let month = 1;
  while (rest >= daysInMonth(year, month)) {
    rest -= daysInMonth(year, month);
    month += 1;
  }
  return dateOf({ year, month, day: rest + 1 });
}

/** The day `days` whole days later (earlier when negative). Throws InputError for a fraction or a date that does not exist. */
export function addDays(on: CalendarDate, days: number): CalendarDate {
  if (!Number.isInteger(days)) throw new InputError('days', 'must be a whole number of days');
  return fromDayNumber(toDayNumber(on) + days);
}

/** Whole days from one date to another: 0 for the same day, negative when `to` is earlier. */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return toDayNumber(to, 'to') - toDayNumber(from, 'from');
}

/** The latest of the days given. Throws InputError when there is none. */
export function latestOf(...days: CalendarDate[]): CalendarDate {
  const [first, ...rest] = days;
  if (first === undefined) throw new InputError('days', 'must hold at least one day');
  return rest.reduce((latest, on) => (on > latest ? on : latest), first);
}

/** The earliest of the days given. Throws InputError when there is none. */
export function earliestOf(...days: CalendarDate[]): CalendarDate {
  const [first, ...rest] = days;
  if (first === undefined) throw new InputError('days', 'must hold at least one day');
  return rest.reduce((earliest, on) => (on < earliest ? on : earliest), first);
}
