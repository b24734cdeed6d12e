import { describe, expect, test } from 'vitest';
import { DAYS_ON_STRIP, placeOf, stretchesOf } from './strip-shape.ts';

describe('a day on the strip of the year', () => {
  test.each([
    ['01-01', 0],
    ['02-29', 59],
    ['03-01', 60],
    ['12-31', DAYS_ON_STRIP - 1],
  ])('%s lies at %i', (monthDay, place) => {
    expect(placeOf(monthDay)).toBe(place);
  });
});

describe('a window on the strip of the year', () => {
  test('covers both its days', () => {
    expect(stretchesOf('04-15', '04-15')).toEqual([{ from: placeOf('04-15'), days: 1 }]);
    expect(stretchesOf('01-01', '12-31')).toEqual([{ from: 0, days: DAYS_ON_STRIP }]);
  });
  test('over the year’s end is two stretches', () => {
    expect(stretchesOf('12-31', '01-01')).toEqual([
      { from: DAYS_ON_STRIP - 1, days: 1 },
      { from: 0, days: 1 },
    ]);
  });
});
