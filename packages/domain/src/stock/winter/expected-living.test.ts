import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../kernel/dates.ts';
import { expectedLiving } from './expected-living.ts';

const winter = { fromMd: '11-15', toMd: '04-14' };
const rates = { lossRatePerDay: 0.001, winterSurvival: 0.8, winter };

describe('expectedLiving', () => {
  test('outside winter plants die by the day', () => {
    expect(expectedLiving({ ...rates, units: 100, from: '2026-06-01', on: '2026-09-09' })).toBeCloseTo(
      100 * Math.exp(-0.1),
      10,
    );
  });

  test('a whole winter is survived by its own share, whatever the daily rate', () => {
    expect(expectedLiving({ ...rates, units: 100, from: '2026-11-15', on: '2027-04-15' })).toBeCloseTo(80, 10);
  });

  test('a year is a winter and the days beside it', () => {
    // 15 Nov 2026 to 14 Apr 2027 are 151 days, so 214 of the 365 lie outside.
    expect(expectedLiving({ ...rates, units: 100, from: '2026-06-01', on: '2027-06-01' })).toBeCloseTo(
      100 * 0.8 * Math.exp(-0.214),
      10,
    );
  });

  test('half a winter is survived by the root of its share', () => {
    const even = { ...rates, winter: { fromMd: '01-01', toMd: '01-10' } };
    expect(expectedLiving({ ...even, units: 100, from: '2026-01-01', on: '2026-01-06' })).toBeCloseTo(
      100 * Math.sqrt(0.8),
      10,
    );
  });

  test('a winter that began last year still counts', () => {
    // From 1 March to 14 April are 45 of the winter's 151 days.
    expect(expectedLiving({ ...rates, units: 100, from: '2026-03-01', on: '2026-04-15' })).toBeCloseTo(
      100 * 0.8 ** (45 / 151),
      10,
    );
  });

  test('on the day itself, or before, all are there', () => {
    expect([
      expectedLiving({ ...rates, units: 7, from: '2026-06-01', on: '2026-06-01' }),
      expectedLiving({ ...rates, units: 7, from: '2026-06-01', on: '2026-05-01' }),
    ]).toEqual([7, 7]);
  });

  test('a span split in two gives the same as the whole, and nothing ever grows', () => {
    const day = fc.integer({ min: 0, max: 1500 }).map((days) => addDays('2023-11-01', days));
    fc.assert(
      fc.property(
        day,
        day,
        day,
        fc.double({ min: 0, max: 0.01, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (a, b, c, lossRatePerDay, winterSurvival) => {
          const [from = a, middle = b, on = c] = [a, b, c].sort();
          const given = { lossRatePerDay, winterSurvival, winter };
          const whole = expectedLiving({ ...given, units: 100, from, on });
          const halfway = expectedLiving({ ...given, units: 100, from, on: middle });
          expect(expectedLiving({ ...given, units: halfway, from: middle, on })).toBeCloseTo(whole, 8);
          expect(whole).toBeLessThanOrEqual(halfway + 1e-9);
        },
      ),
    );
  });

  test.each([
    ['units', { units: -1 }],
    ['lossRatePerDay', { lossRatePerDay: -0.1 }],
    ['winterSurvival', { winterSurvival: 80 }],
    ['on', { on: '2026-02-30' }],
  ])('refuses what cannot be true, naming %s', (argument, wrong) => {
    expect(() => expectedLiving({ ...rates, units: 1, from: '2026-01-01', on: '2026-02-01', ...wrong })).toThrow(
      expect.objectContaining({ argument }),
    );
  });
});
