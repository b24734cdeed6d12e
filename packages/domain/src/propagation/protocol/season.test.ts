import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CalendarDate, dateParts } from '../../kernel/dates.ts';
import { afterGrowing, beforeGrowing } from './season.ts';

const day = fc.integer({ min: -800, max: 800 }).map((days) => addDays('2028-02-29', days));
const months = fc.subarray([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], { maxLength: 11 });

/** The same told day by day. */
function walked(from: CalendarDate, days: number, dormantMonths: readonly number[], step: 1 | -1): CalendarDate {
  let on = from;
  for (let left = days; left > 0; on = addDays(on, step))
    if (!dormantMonths.includes(dateParts(step === 1 ? on : addDays(on, -1)).month)) left -= 1;
  return on;
}

describe('headway of plants that rest', () => {
  it('forward is as many growing days as a walk from day to day finds', () => {
    fc.assert(
      fc.property(day, fc.nat(400), months, (from, days, dormant) => {
        expect(afterGrowing(from, days, dormant)).toBe(walked(from, days, dormant, 1));
      }),
    );
  });

  it('back is as many growing days as a walk from day to day finds', () => {
    fc.assert(
      fc.property(day, fc.nat(400), months, (until, days, dormant) => {
        expect(beforeGrowing(until, days, dormant)).toBe(walked(until, days, dormant, -1));
      }),
    );
  });
});
