import { expect, test } from 'vitest';
import { mayComeUpUntil } from './not-up.ts';

test("what is not up may come up until the year's last-emergence day, that day included", () => {
  expect(['2026-04-20', '2026-06-10'].map((on) => mayComeUpUntil(on, '06-10'))).toEqual(['2026-06-10', '2026-06-10']);
});

test('a count after that day keeps them for another year', () => {
  expect(mayComeUpUntil('2026-06-11', '06-10')).toBe('2027-06-10');
});

test('where no such day is known, the end of June is taken', () => {
  expect(mayComeUpUntil('2026-04-20', null)).toBe('2026-06-30');
});
