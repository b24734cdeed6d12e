import { describe, expect, it } from 'vitest';
import { germinationCourse } from '../seed/germination-course.ts';
import { newPerDay } from './new-per-day.ts';

const counts = (...rows: [string, number][]) => rows.map(([on, emergedUnits]) => ({ on, emergedUnits }));

describe('what newly came up on each day', () => {
  it('is booked on the day it was counted, with none on the days between', () => {
    expect(newPerDay(counts(['2026-04-03', 4], ['2026-04-06', 10]), '2026-04-01')).toEqual([0, 4, 0, 0, 6]);
  });
  it('is not undone by what died since', () => {
    expect(newPerDay(counts(['2026-04-02', 8], ['2026-04-03', 5], ['2026-04-04', 9]), '2026-04-01')).toEqual([8, 0, 1]);
  });
  it('goes to the first day where it was counted on the day of the start', () => {
    expect(newPerDay(counts(['2026-04-01', 3]), '2026-04-01')).toEqual([3]);
  });
  it('does not depend on the order in which counts are given', () => {
    expect(newPerDay(counts(['2026-04-06', 10], ['2026-04-03', 4]), '2026-04-01')).toEqual([0, 4, 0, 0, 6]);
  });
  it('makes the published course of germination, 80 % of 50 (tests of the R package germinationmetrics, Aravind et al.)', () => {
    const daily = [0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0];
    let sum = 0;
    const cumulative = daily.map((count, day) => ({
      on: `2026-04-${String(day + 2).padStart(2, '0')}`,
      emergedUnits: (sum += count),
    }));
    expect(newPerDay(cumulative, '2026-04-01')).toEqual(daily);
    expect(germinationCourse(newPerDay(cumulative, '2026-04-01'), 50)).toMatchObject({ percentage: 80 });
  });
});
