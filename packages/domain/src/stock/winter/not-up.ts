import { type CalendarDate, requireDate } from '../../kernel/dates.ts';
import { type MonthDay, nextMonthDay } from '../../kernel/month-days.ts';

/** Where nobody knows until when a plant may still come up: 30 June. Assumed. */
export const ASSUMED_LAST_EMERGENCE: MonthDay = '06-30';

/**
 * The last day on which plants that a count of `countedOn` found not yet up may still come up; from the next day on they are asked about. A count
 * that is taken after the year's last-emergence day and still keeps them is the answer to that question: they may come up the year after.
 * Throws InputError for a day that does not exist.
 */
export const mayComeUpUntil = (countedOn: CalendarDate, lastEmergenceMd: MonthDay | null): CalendarDate =>
  nextMonthDay(requireDate('countedOn', countedOn), lastEmergenceMd ?? ASSUMED_LAST_EMERGENCE);
