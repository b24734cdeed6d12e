/** Where days of the year lie on a strip: 0 to 366, as in a leap year, so that every day has a place. */
import { daysBetween } from '@rootclock/domain';

export const DAYS_ON_STRIP = 366;

/** Days before a day of the year. */
export const placeOf = (monthDay: string): number => daysBetween('2000-01-01', `2000-${monthDay}`);

export interface Stretch {
  from: number;
  days: number;
}

/** The stretches of a window, both its days included; one over the year's end is two. */
export function stretchesOf(opensMd: string, closesMd: string): Stretch[] {
  const from = placeOf(opensMd);
  const to = placeOf(closesMd);
  if (from <= to) return [{ from, days: to - from + 1 }];
  return [
    { from, days: DAYS_ON_STRIP - from },
    { from: 0, days: to + 1 },
  ];
}
