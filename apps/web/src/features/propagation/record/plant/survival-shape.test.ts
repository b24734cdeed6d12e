import { expect, test } from 'vitest';
import { bandOf, stepsOf, survivalAt, thinned } from './survival-shape.ts';

const steps = [
  { days: 20, atRisk: 40, died: 10, survival: 0.75, standardError: 0.07 },
  { days: 40, atRisk: 20, died: 4, survival: 0.6, standardError: 0.3 },
];

test('the curve keeps its height until the day of the next deaths, and to the last day watched', () => {
  expect(stepsOf(bandOf(steps), 'survival', 90)).toEqual([
    { days: 0, share: 1 },
    { days: 20, share: 1 },
    { days: 20, share: 0.75 },
    { days: 40, share: 0.75 },
    { days: 40, share: 0.6 },
    { days: 90, share: 0.6 },
  ]);
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
