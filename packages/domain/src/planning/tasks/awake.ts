import { addDays, type CalendarDate, dateOf, dateParts } from '../../kernel/dates.ts';
import { type MonthDay, nextMonthDay } from '../../kernel/month-days.ts';
import { isDormant, looksDeadTooSoon } from '../../pot-life/dormancy.ts';

interface Sleeper {
  dormantMonths: readonly number[];
  lastEmergenceMd: MonthDay | null;
}

/**
 * The first day on or after `on` on which a plant that looks dead may be taken for dead: its last-emergence day where it is dormant by then and
 * that day is known, else the first day after its dormant months, else `on` itself. Throws InputError for a month or day that does not exist.
 */
export function awakeFrom({ dormantMonths, lastEmergenceMd }: Sleeper, on: CalendarDate): CalendarDate {
  if (!looksDeadTooSoon({ dormantMonths, lastEmergenceMd, on })) return on;
  if (lastEmergenceMd !== null) return nextMonthDay(on, lastEmergenceMd);
  let day = on;
  while (isDormant(dormantMonths, day)) {
    const { year, month } = dateParts(day);
    // The 28th and four days lie in the next month, whatever the month's length.
    day = dateOf({ ...dateParts(addDays(dateOf({ year, month, day: 28 }), 4)), day: 1 });
  }
  return day;
}
