import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { dayIn, nextDayAt } from './zone-day.ts';

const at = (text: string): number => Date.parse(text);
const HOUR = 3_600_000;

describe('the day in a zone', () => {
  it.each([
    ['Pacific/Auckland', '2026-05-20T11:59:59Z', '2026-05-20'],
    ['Pacific/Auckland', '2026-05-20T12:00:00Z', '2026-05-21'],
    ['America/Chicago', '2026-05-21T04:59:59Z', '2026-05-20'],
    ['America/Chicago', '2026-05-21T05:00:00Z', '2026-05-21'],
    ['America/Chicago', '2026-12-01T05:59:59Z', '2026-11-30'],
    ['Pacific/Kiritimati', '2026-12-31T10:00:00Z', '2027-01-01'],
    ['Asia/Kathmandu', '2026-05-20T18:15:00Z', '2026-05-21'],
  ])('in %s at %s is %s', (zone, instant, day) => {
    expect(dayIn(at(instant), zone)).toBe(day);
  });

  it.each([
    // The day on which the clocks go forward has 23 hours, the one on which they go back 25.
    ['America/Chicago', '2026-03-08T06:00:00Z', 23],
    ['America/Chicago', '2026-11-01T05:00:00Z', 25],
    ['Pacific/Auckland', '2026-09-26T12:00:00Z', 23],
    ['Pacific/Auckland', '2026-04-04T11:00:00Z', 25],
    // Half an hour, and a day that has no midnight.
    ['Australia/Lord_Howe', '2026-04-04T13:00:00Z', 24.5],
    ['America/Santiago', '2026-09-05T04:00:00Z', 24],
    ['America/Santiago', '2026-09-06T04:00:00Z', 23],
  ])('in %s beginning at %s has %d hours', (zone, begins, hours) => {
    expect(dayIn(at(begins) - 1, zone)).not.toBe(dayIn(at(begins), zone));
    expect(nextDayAt(at(begins), zone)).toBe(at(begins) + hours * HOUR);
    expect(nextDayAt(at(begins) + 7 * HOUR + 123, zone)).toBe(at(begins) + hours * HOUR);
  });

  it('is the server’s day, and turns when the server’s does, at any instant of a hundred years in any zone', () => {
    const zones = Intl.supportedValuesOf('timeZone');
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: at('2000-01-01T00:00:00Z'), max: at('2099-12-31T00:00:00Z') }),
        (zone, instant) => {
          const day = dayIn(instant, zone);
          expect(day).toBe(DateTime.fromMillis(instant, { zone }).toISODate());
          const turns = nextDayAt(instant, zone);
          expect([dayIn(turns - 1, zone), dayIn(turns, zone) > day]).toEqual([day, true]);
          expect(turns - instant).toBeLessThanOrEqual(25 * HOUR);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('throws where the browser does not know the zone', () => {
    expect(() => dayIn(0, 'Nowhere/Atall')).toThrow(RangeError);
  });
});
