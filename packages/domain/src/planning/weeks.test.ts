import { expect, it } from 'vitest';
import { mondayOf, weekOf, weekStart } from './weeks.ts';

it.each([
  ['2027-01-04', '2027-01-04'],
  ['2027-01-10', '2027-01-04'],
  ['2027-01-01', '2026-12-28'],
  ['1969-12-31', '1969-12-29'],
  ['1970-01-01', '1969-12-29'],
])('the week of %s begins on %s', (on, monday) => {
  expect(weekStart(on)).toBe(monday);
});
it('weeks count from the first Monday, over the year’s end and leap days', () => {
  expect([
    weekOf('2027-12-27', '2027-12-27'),
    weekOf('2027-12-27', '2028-01-02'),
    weekOf('2027-12-27', '2028-01-03'),
    weekOf('2028-02-28', '2028-03-06'),
    weekOf('2027-12-27', '2027-12-26'),
  ]).toEqual([0, 0, 1, 1, -1]);
  expect(mondayOf('2027-12-27', 52)).toBe('2028-12-25');
});
