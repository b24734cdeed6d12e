import { expect, test } from 'vitest';
import { bandOf, heldUntil, survivalAt, survivalPaths, thinned } from './survival-shape.ts';

const steps = [
  { days: 20, atRisk: 40, died: 10, survival: 0.75, standardError: 0.07 },
  { days: 40, atRisk: 20, died: 4, survival: 0.6, standardError: 0.3 },
];

test('the curve keeps its height until the day of the next deaths, and to the last day watched', () => {
  const paths = survivalPaths(heldUntil(bandOf(steps), 90), { xOf: (days) => days, yOf: (share) => 100 * share });
  expect(paths.curve).toBe('M0,100L20,100L20,75L40,75L40,60L90,60L90,60');
  expect(paths.band).toBe(
    'M0,100L20,100L20,88.7L40,88.7L40,100L90,100L90,100L90,1.2L90,1.2L40,1.2L40,61.3L20,61.3L20,100L0,100Z',
  );
});

test('a curve whose last deaths were on the last day watched ends there', () => {
  expect(heldUntil(bandOf(steps), 40)).toEqual(bandOf(steps));
});

test('the band stays between none and all', () => {
  expect(bandOf(steps).at(-1)).toMatchObject({ low: expect.closeTo(0.012, 3), high: 1 });
});

test('on a day without deaths the step before it holds', () => {
  expect([0, 19, 20, 365].map((days) => survivalAt(bandOf(steps), days))).toEqual([1, 1, 0.75, 0.6]);
});

test('a long table is thinned and keeps its ends', () => {
  const long = thinned(Array.from({ length: 200 }, (_, index) => index));
  expect([long.length, long[0], long.at(-1)]).toEqual([24, 0, 199]);
});
