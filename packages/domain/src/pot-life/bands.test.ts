import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../kernel/dates.ts';
import { InputError } from '../kernel/input.ts';
import { bandDays, leaveBy, POT_BANDS, type PotBand, potBand } from './bands.ts';
import { rootDepth } from './root-depth.ts';

const today = '2026-09-01';

describe('bands', () => {
  it.each([
    [-1, 'past'],
    [0, 'due'],
    [14, 'due'],
    [15, 'coming'],
    [42, 'coming'],
    [43, 'ample'],
  ])('with 14 days of notice put %i days left into %s', (daysLeft, band) => {
    expect(potBand(addDays(today, daysLeft), today, 14)).toEqual({ band, daysLeft });
  });

  it('tell a plant without a limit from one with much time', () => {
    expect(potBand(null, today, 14)).toEqual({ band: 'unlimited', daysLeft: null });
  });

  it('part all days without a gap and in order', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 2000 }), fc.integer({ min: 0, max: 200 }), (left, notice) => {
        const place = (days: number) => POT_BANDS.indexOf(potBand(addDays(today, days), today, notice).band);
        expect(place(left)).toBeGreaterThanOrEqual(0);
        expect(place(left + 1)).toBeGreaterThanOrEqual(place(left));
      }),
    );
  });

  it('are told by their days as they are told of a day', () => {
    const dated = POT_BANDS.filter((band): band is Exclude<PotBand, 'unlimited'> => band !== 'unlimited');
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 2000 }), fc.integer({ min: 0, max: 366 }), (left, notice) => {
        const day = addDays(today, left);
        const holding = dated.filter((band) => {
          const { from, until } = bandDays(band, today, notice);
          return (from === null || from <= day) && (until === null || day <= until);
        });
        expect(holding).toEqual([potBand(day, today, notice).band]);
      }),
    );
  });

  it('refuse half a day of notice and a day that does not exist', () => {
    expect(() => potBand(today, today, 1.5)).toThrow(/^noticeDays: /);
    expect(() => bandDays('due', today, 1.5)).toThrow(/^noticeDays: /);
    expect(() => potBand('2026-09-31', today, 14)).toThrow(/^plantByOn: /);
    expect(() => potBand(today, 'soon', 14)).toThrow(/^today: /);
  });
});

describe('leaving for a client', () => {
  it('comes the lead before the plant-by day', () => {
    expect(leaveBy('2026-10-15', 10)).toBe('2026-10-05');
    expect(leaveBy('2026-10-15', 0)).toBe('2026-10-15');
    expect(leaveBy(null, 10)).toBeNull();
  });

  it('refuses a negative lead', () => {
    expect(() => leaveBy('2026-10-15', -1)).toThrow(InputError);
  });
});

describe('root depth', () => {
  it('is a multiple of the greatest height', () => {
    expect(rootDepth({ greatestTopHeightMm: 100, ratio: 2.5, containerDepthMm: 240 })).toEqual({
      rootDepthMm: 250,
      outOfPot: true,
      spareMm: 0,
    });
    expect(rootDepth({ greatestTopHeightMm: 80, ratio: 3, containerDepthMm: 240 })).toEqual({
      rootDepthMm: 240,
      outOfPot: false,
      spareMm: 0,
    });
  });

  it('refuses what cannot be a length', () => {
    expect(() => rootDepth({ greatestTopHeightMm: -1, ratio: 2, containerDepthMm: 240 })).toThrow(
      /^greatestTopHeightMm: /,
    );
    expect(() => rootDepth({ greatestTopHeightMm: Number.NaN, ratio: 2, containerDepthMm: 240 })).toThrow(InputError);
    expect(() => rootDepth({ greatestTopHeightMm: 10, ratio: 0, containerDepthMm: 240 })).toThrow(/^ratio: /);
    expect(() => rootDepth({ greatestTopHeightMm: 10, ratio: 2, containerDepthMm: 0 })).toThrow(/^containerDepthMm: /);
  });
});
