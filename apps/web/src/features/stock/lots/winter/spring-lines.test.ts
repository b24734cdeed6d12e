import { expect, test } from 'vitest';
import { countsOf, EMPTY_LINE, sumOf, withRestUp } from './spring-lines.ts';

const rows = [
  { lotId: 'a', placeId: 'x', standing: 40 },
  { lotId: 'b', placeId: 'x', standing: 10 },
  { lotId: 'c', placeId: 'y', standing: 7 },
];

test('a lot in which nothing was typed is not sent, and an empty field beside a full one is none', () => {
  expect(
    countsOf(rows, {
      'a/x': { up: 30, dead: null, notUp: 10 },
      'b/x': EMPTY_LINE,
      'c/y': { up: 0, dead: null, notUp: null },
    }),
  ).toEqual([
    { lotId: 'a', placeId: 'x', upUnits: 30, deadUnits: 0, notUpUnits: 10 },
    { lotId: 'c', placeId: 'y', upUnits: 0, deadUnits: 0, notUpUnits: 0 },
  ]);
});

test('the rest is what is neither dead nor asleep, and never less than none', () => {
  expect([withRestUp({ up: null, dead: 4, notUp: 6 }, 40), withRestUp({ up: 3, dead: 9, notUp: null }, 7)]).toEqual([
    { up: 30, dead: 4, notUp: 6 },
    { up: 0, dead: 9, notUp: 0 },
  ]);
});

test('a line sums what is typed', () => {
  expect(sumOf({ up: 30, dead: null, notUp: 6 })).toBe(36);
});
