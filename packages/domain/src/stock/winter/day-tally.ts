import { type CalendarDate, dateParts, daysInMonth, toDayNumber } from '../../kernel/dates.ts';
import { InputError } from '../../kernel/input.ts';
import { monthDayIn, requireMonthDay } from '../../kernel/month-days.ts';
import { type Season, SEASONS } from '../../kernel/rough-days.ts';
import type { WinterDays } from './expected-living.ts';

const SEASON_OF_MONTH: readonly Season[] = [
  'winter',
  'winter',
  'spring',
  'spring',
  'spring',
  'summer',
  'summer',
  'summer',
  'autumn',
  'autumn',
  'autumn',
  'winter',
];

/** The meteorological season of a day in the north. Throws InputError for a day that does not exist. */
export const seasonOf = (on: CalendarDate): Season => SEASON_OF_MONTH[dateParts(on).month - 1] as Season;

/** How many days of each season, and outside winter, lie between days of a span: reckoned once, asked for many plants. */
export interface DayTally {
  /** The day number after the span's last day. */
  endDay: number;
  /** Days from this day number on to the span's end. Throws InputError for a day before the span. */
  until(day: number): { seasons: Record<Season, number>; growing: number };
  isWinter(day: number): boolean;
}

const asNumber = (on: CalendarDate) => Number(on.slice(5, 7)) * 100 + Number(on.slice(8));

/** Tallies the days from `from` up to, but not with, `today`. Throws InputError for days that do not exist. */
export function tallyDays(from: CalendarDate, today: CalendarDate, winter: WinterDays): DayTally {
  const startDay = toDayNumber(from, 'from');
  const endDay = Math.max(startDay, toDayNumber(today, 'today'));
  requireMonthDay('winter.fromMd', winter.fromMd);
  requireMonthDay('winter.toMd', winter.toMd);
  const length = endDay - startDay;
  const left = SEASONS.map(() => new Int32Array(length + 1));
  const growing = new Int32Array(length + 1);
  const cold = new Uint8Array(length + 1);
  let { year, month, day } = dateParts(from);
  const edges = (of: number) => ({
    begins: asNumber(monthDayIn(of, winter.fromMd)),
    ends: asNumber(monthDayIn(of, winter.toMd)),
  });
  let edge = edges(year);
  const seasonAt = new Uint8Array(length + 1);
  for (let at = 0; at <= length; at += 1) {
    const monthDay = month * 100 + day;
    cold[at] = Number(
      edge.begins <= edge.ends
        ? monthDay >= edge.begins && monthDay <= edge.ends
        : monthDay >= edge.begins || monthDay <= edge.ends,
    );
    seasonAt[at] = SEASONS.indexOf(SEASON_OF_MONTH[month - 1] as Season);
    day += 1;
    if (day > daysInMonth(year, month)) {
      day = 1;
      month += 1;
      if (month > 12) {
        month = 1;
        year += 1;
        edge = edges(year);
      }
    }
  }
  for (let at = length - 1; at >= 0; at -= 1) {
    for (const [index, days] of left.entries()) days[at] = (days[at + 1] ?? 0) + Number(seasonAt[at] === index);
    growing[at] = (growing[at + 1] ?? 0) + 1 - (cold[at] ?? 0);
  }
  const indexOf = (number: number): number => {
    if (number < startDay) throw new InputError('day', 'must not lie before the days that were tallied');
    return Math.min(number, endDay) - startDay;
  };
  return {
    endDay,
    until: (number) => {
      const at = indexOf(number);
      const [spring = 0, summer = 0, autumn = 0, winterDays = 0] = left.map((days) => days[at]);
      return { seasons: { spring, summer, autumn, winter: winterDays }, growing: growing[at] ?? 0 };
    },
    isWinter: (number) => cold[indexOf(number)] === 1,
  };
}
