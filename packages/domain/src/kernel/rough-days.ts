import { type CalendarDate, dateOf, daysInMonth, isCalendarDate } from './dates.ts';
import { InputError } from './input.ts';
import { isWithinYears, YEARS } from './years.ts';

/** How exactly a day is known. */
export const DAY_PRECISIONS = ['day', 'month', 'season', 'year'] as const;
export type DayPrecision = (typeof DAY_PRECISIONS)[number];

export const SEASONS = ['spring', 'summer', 'autumn', 'winter'] as const;
export type Season = (typeof SEASONS)[number];

/** A day known only roughly: it lies from `earliestOn` to `latestOn`, both included. */
export interface RoughDay {
  earliestOn: CalendarDate;
  latestOn: CalendarDate;
  precision: DayPrecision;
}

const FIRST_MONTH_OF_SEASON: Record<Season, number> = { spring: 3, summer: 6, autumn: 9, winter: 12 };
const YEAR_FORM = /^\d{4}$/;
const MONTH_FORM = /^(\d{4})-(\d{2})$/;
const SEASON_FORM = /^(\d{4})-(spring|summer|autumn|winter)$/;

function monthsFrom(year: number, month: number, count: number, precision: DayPrecision): RoughDay {
  const lastMonth = ((month - 1 + count - 1) % 12) + 1;
  const lastYear = year + Math.floor((month - 1 + count - 1) / 12);
  return {
    earliestOn: dateOf({ year, month, day: 1 }),
    latestOn: dateOf({ year: lastYear, month: lastMonth, day: daysInMonth(lastYear, lastMonth) }),
    precision,
  };
}

/**
 * Reads a day as people remember it: '2026-04-14', '2026-04', '2026-spring' or '2026'. Clocks start at `earliestOn`,
 * since a plant taken for younger than it is declines unseen. Seasons are the meteorological ones of the northern
 * hemisphere: spring March–May, summer June–August, autumn September–November. Winter carries the year in which it
 * ends ('2026-winter' is December 2025 to February 2026), which is also the earlier of its two readings.
 * Throws InputError naming the argument for anything else, and for years outside 1900 to 2200.
 */
export function earliestOfDay(value: string, argument = 'day'): RoughDay {
  const text = typeof value === 'string' ? value : '';
  if (/^\d{4}/.test(text) && !isWithinYears(text))
    throw new InputError(argument, `must lie within the years ${YEARS.least} to ${YEARS.most}`, { value });
  if (isCalendarDate(value)) return { earliestOn: value, latestOn: value, precision: 'day' };
  const year = Number(text.slice(0, 4));
  if (YEAR_FORM.test(text)) return monthsFrom(year, 1, 12, 'year');
  const month = MONTH_FORM.exec(text);
  const monthNumber = Number(month?.[2]);
  if (month !== null && monthNumber >= 1 && monthNumber <= 12) return monthsFrom(year, monthNumber, 1, 'month');
  const season = SEASONS.find((name) => name === SEASON_FORM.exec(text)?.[2]);
  if (season !== undefined) {
    return monthsFrom(season === 'winter' ? year - 1 : year, FIRST_MONTH_OF_SEASON[season], 3, 'season');
  }
  throw new InputError(
    argument,
    'must be a day, month, season or year such as 2026-04-14, 2026-04, 2026-spring or 2026',
    {
      value: String(value),
    },
  );
}
