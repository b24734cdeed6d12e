import { describe, expect, it } from 'vitest';
import { type CountedCourse, courseOf, roundTop } from './course-scale.ts';

const own: CountedCourse = {
  code: 'ASTU-26-001',
  startedOn: '2026-04-01',
  sown: 100,
  counts: [
    { on: '2026-04-11', emergedUnits: 10 },
    { on: '2026-05-01', emergedUnits: 40 },
  ],
};
const spread = (course: ReturnType<typeof courseOf>) => course.own.points.map(({ x, y }) => [x, y]);

describe('the course of a batch', () => {
  it('ends its axis on a round number', () => {
    expect([0, 3, 7, 12, 48, 51, 288].map(roundTop)).toEqual([4, 4, 8, 20, 50, 60, 300]);
  });
  it('places counts by their days from the start and their share of what was sown', () => {
    const course = courseOf(own, [], '2026-05-20');
    expect(course).toMatchObject({ lastDays: 30, top: 40, inShares: true });
    expect(spread(course)).toEqual([
      [10 / 30, 0.25],
      [1, 1],
    ]);
  });
  it('stands beside earlier batches by their own days and shares', () => {
    const course = courseOf(
      own,
      [{ code: 'ASTU-25-001', startedOn: '2025-03-01', sown: 50, counts: [{ on: '2025-04-30', emergedUnits: 40 }] }],
      '2026-05-20',
    );
    expect(course).toMatchObject({ lastDays: 60, top: 80 });
    expect(course.earlier[0]?.points).toEqual([{ x: 1, y: 1, days: 60, on: '2025-04-30' }]);
  });
  it('stands alone in units where nobody knows what was sown', () => {
    const course = courseOf({ ...own, sown: null }, [{ ...own, code: 'ASTU-25-001' }], '2026-05-20');
    expect(course).toMatchObject({ top: 40, inShares: false, earlier: [] });
  });
  it('stands still for a count on the first day', () => {
    expect(
      courseOf({ ...own, counts: [{ on: '2026-04-01', emergedUnits: 2 }] }, [], '2026-04-01').own.points[0]?.x,
    ).toBe(0);
  });
});
