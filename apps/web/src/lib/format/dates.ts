/** Days and instants in the reader's language, the day always seen from the nursery's today. */
import { daysBetween } from '@rootclock/domain';
import { daysOf } from '../../messages/days.ts';

export interface Dates {
  /** "14 April 2026" */
  long(on: string): string;
  /** "14 Apr", with the year where it is not this one. */
  short(on: string): string;
  month(on: string): string;
  /** "14 April" from `04-14`. */
  yearly(monthDay: string): string;
  /** A rough day's own text, such as `2026-04` or `2026-spring`, in words. */
  rough(
    earliestOn: string,
    precision: 'day' | 'month' | 'season' | 'year',
    seasonName: (season: 'spring' | 'summer' | 'autumn' | 'winter') => string,
  ): string;
  /** "in 12 days", "3 days ago", "today" */
  fromToday(on: string): string;
  /** Days from today, negative when past. */
  daysLeft(on: string): number;
  /** An instant by the nursery's clock. */
  instant(at: string): string;
}

const SEASON_STARTS = { '03': 'spring', '06': 'summer', '09': 'autumn', '12': 'winter' } as const;

export function datesIn(language: string, today: string, zone: string): Dates {
  const days = daysOf(language);
  const relative = new Intl.RelativeTimeFormat(language, { numeric: 'auto' });
  const instants = new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone: zone });
  return {
    long: days.long,
    short: (on) => days.short(on, Number(today.slice(0, 4))),
    month: days.month,
    yearly: days.yearly,
    rough: (earliestOn, precision, seasonName) => {
      const year = Number(earliestOn.slice(0, 4));
      if (precision === 'day') return days.long(earliestOn);
      if (precision === 'month') return days.month(earliestOn);
      if (precision === 'year') return String(year);
      const season = SEASON_STARTS[earliestOn.slice(5, 7) as keyof typeof SEASON_STARTS] ?? 'spring';
      // Winter carries the year in which it ends.
      return `${seasonName(season)} ${season === 'winter' ? year + 1 : year}`;
    },
    fromToday: (on) => relative.format(daysBetween(today, on), 'day'),
    daysLeft: (on) => daysBetween(today, on),
    instant: (at) => instants.format(new Date(at)),
  };
}
