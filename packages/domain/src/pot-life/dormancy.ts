import { addDays, type CalendarDate, dateOf, dateParts } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { type MonthDay, nextMonthDay } from '../kernel/month-days.ts';

/** Returns the months. Throws InputError naming the argument unless they are months 1 to 12 that leave one to grow in. */
export function requireDormantMonths(argument: string, months: readonly number[]): readonly number[] {
  if (months.some((month) => !Number.isInteger(month) || month < 1 || month > 12)) {
    throw new InputError(argument, 'must be months from 1 to 12');
  }
  if (new Set(months).size === 12)
    throw new InputError(argument, 'must leave at least one month in which the plant grows');
  return months;
}

/** Whether a day lies in the plant's dormant months (1 to 12). A dormant lot is not dead, and its clocks go on. */
export function isDormant(dormantMonths: readonly number[], on: CalendarDate): boolean {
  return requireDormantMonths('dormantMonths', dormantMonths).includes(dateParts(on).month);
}

// The first day of the dormant season that holds `on`, or of the last one before it.
function dormancyBefore(dormantMonths: readonly number[], on: CalendarDate): CalendarDate {
  let { year, month } = dateParts(on);
  const before = (m: number) => (m === 1 ? 12 : m - 1);
  while (!dormantMonths.includes(month) || dormantMonths.includes(before(month))) {
    year = month === 1 ? year - 1 : year;
    month = before(month);
  }
  return dateOf({ year, month, day: 1 });
}

/**
 * Whether it is too soon to write a plant off because it looks dead: from the first day of its dormant season up to, but
 * not on, that season's last-emergence day, or until the dormant months end when no such day is known. Milkweeds die back
 * in early autumn and some return late in spring (common practice). Never true for a plant without dormant months.
 * Throws InputError for a month or day that does not exist.
 */
export function looksDeadTooSoon({
  dormantMonths,
  lastEmergenceMd,
  on,
}: {
  dormantMonths: readonly number[];
  lastEmergenceMd: MonthDay | null;
  on: CalendarDate;
}): boolean {
  requireDormantMonths('dormantMonths', dormantMonths);
  if (dormantMonths.length === 0) return false;
  if (lastEmergenceMd === null) return isDormant(dormantMonths, on);
  const startOn = dormancyBefore(dormantMonths, on);
  return on < nextMonthDay(addDays(startOn, 1), lastEmergenceMd);
}
