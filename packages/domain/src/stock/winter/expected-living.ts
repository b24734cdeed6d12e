import { type CalendarDate, addDays, dateParts, daysBetween, requireDate } from '../../kernel/dates.ts';
import { InputError, MAX_UNITS, requirePositive, requireShare } from '../../kernel/input.ts';
import { type MonthDay, monthDayIn } from '../../kernel/month-days.ts';

/** The days of the year, both included, on which plants in pots are in winter; they run over the year's end or not. */
export interface WinterDays {
  fromMd: MonthDay;
  toMd: MonthDay;
}

/** The days in [from, on) that lie in the winter that begins in `year`, and how long that winter is. */
function overlapWith(
  year: number,
  { fromMd, toMd }: WinterDays,
  from: CalendarDate,
  on: CalendarDate,
): { days: number; length: number } {
  const begins = monthDayIn(year, fromMd);
  const sameYear = monthDayIn(year, toMd);
  const ends = addDays(sameYear >= begins ? sameYear : monthDayIn(year + 1, toMd), 1);
  const days = daysBetween(from > begins ? from : begins, on < ends ? on : ends);
  return { days: Math.max(0, days), length: daysBetween(begins, ends) };
}

/**
 * How many of `units` living on `from` are expected to live on `on`: outside winter they die at `lossRatePerDay` (deaths per plant-day, so that
 * exp(−rate · days) are left), and a whole winter is survived by the share `winterSurvival`, a part of one by as much of it as it is long
 * (survival to the power of that part). A day before `from` answers `units`. Not rounded. Splitting a span in two gives the same as the whole.
 * Throws InputError for units that are negative, a rate that is negative, a share outside 0 to 1, and days that do not exist.
 */
export function expectedLiving({
  units,
  from,
  on,
  lossRatePerDay,
  winterSurvival,
  winter,
}: {
  units: number;
  from: CalendarDate;
  on: CalendarDate;
  lossRatePerDay: number;
  winterSurvival: number;
  winter: WinterDays;
}): number {
  if (!(units >= 0 && units <= MAX_UNITS)) throw new InputError('units', `must be a number from 0 to ${MAX_UNITS}`);
  if (lossRatePerDay !== 0) requirePositive('lossRatePerDay', lossRatePerDay);
  requireShare('winterSurvival', winterSurvival);
  const days = daysBetween(requireDate('from', from), requireDate('on', on));
  if (days <= 0) return units;
  let growing = days;
  let winters = 0;
  for (let year = dateParts(from).year - 1; year <= dateParts(on).year; year += 1) {
    const overlap = overlapWith(year, winter, from, on);
    growing -= overlap.days;
    winters += overlap.days / overlap.length;
  }
  return units * Math.exp(-lossRatePerDay * growing) * winterSurvival ** winters;
}
