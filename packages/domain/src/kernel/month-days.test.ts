import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, fromDayNumber, toDayNumber } from './dates.ts';
import { isMonthDay, monthDayIn, nextMonthDay } from './month-days.ts';

describe('days of the year', () => {
  it.each(['02-30', '13-01', '00-10', '04-31', '4-1', '2026-04-01', '', null])('refuse %j', (value) => {
    expect(isMonthDay(value)).toBe(false);
  });

  it('put the leap day on 28 February in a common year', () => {
    expect(isMonthDay('02-29')).toBe(true);
    expect(monthDayIn(2027, '02-29')).toBe('2027-02-28');
    expect(monthDayIn(2028, '02-29')).toBe('2028-02-29');
  });

  it('find the same day when it is that day', () => {
    expect(nextMonthDay('2026-11-01', '11-01')).toBe('2026-11-01');
    expect(nextMonthDay('2026-11-02', '11-01')).toBe('2027-11-01');
  });

  it('are never more than a leap year away', () => {
    const day = fc.integer({ min: toDayNumber('1990-01-01'), max: toDayNumber('2100-12-31') }).map(fromDayNumber);
    const monthDay = fc.integer({ min: 0, max: 365 }).map((n) => fromDayNumber(toDayNumber('2000-01-01') + n).slice(5));
    fc.assert(
      fc.property(day, monthDay, (on, md) => {
        const distance = daysBetween(on, nextMonthDay(on, md));
        return distance >= 0 && distance <= 366;
      }),
    );
  });
});
