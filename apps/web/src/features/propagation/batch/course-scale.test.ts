import { describe, expect, it } from 'vitest';
import { courseOf, roundTop } from './course-scale.ts';

describe('the course of a batch', () => {
  it('ends its axis on a round number', () => {
    expect([0, 3, 7, 12, 48, 51, 288].map(roundTop)).toEqual([4, 4, 8, 20, 50, 60, 300]);
  });
  it('places counts by their days from the start and their share of the axis', () => {
    const { points, lastDays, topUnits } = courseOf([{ on: '2026-04-11', emergedUnits: 10 }, { on: '2026-05-01', emergedUnits: 40 }], '2026-04-01', '2026-05-20');
    expect({ lastDays, topUnits }).toEqual({ lastDays: 30, topUnits: 40 });
    expect(points.map(({ x, y }) => [x, y])).toEqual([[10 / 30, 0.25], [1, 1]]);
  });
  it('stands still for a count on the first day', () => {
    expect(courseOf([{ on: '2026-04-01', emergedUnits: 2 }], '2026-04-01', '2026-04-01').points[0]?.x).toBe(0);
  });
});
