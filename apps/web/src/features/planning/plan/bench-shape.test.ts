import { describe, expect, it } from 'vitest';
import { benchShape } from './bench-shape.ts';

const weeks = (...rows: [number, number][]) =>
  rows.map(([standingCm2, plannedCm2], at) => ({ startsOn: `2027-01-0${at + 1}`, standingCm2, plannedCm2 }));

describe('the shape of bench space', () => {
  it('reaches its height with what there is', () => {
    expect(benchShape({ weeks: weeks([20, 0], [20, 60]), capacityCm2: 100 })).toMatchObject({
      capacity: 1,
      peak: { startsOn: '2027-01-02' },
      bars: [
        { standing: 0.2, together: 0.2 },
        { standing: 0.2, together: 0.8 },
      ],
    });
  });
  it('reaches its height with what stands where that is more', () => {
    expect(benchShape({ weeks: weeks([200, 0]), capacityCm2: 100 })).toMatchObject({
      capacity: 0.5,
      bars: [{ together: 1 }],
    });
  });
  it('has no line where nobody measured', () =>
    expect(benchShape({ weeks: weeks([10, 10]), capacityCm2: null })).toMatchObject({ capacity: null }));
  it('is none where nothing stands', () => expect(benchShape({ weeks: weeks([0, 0]), capacityCm2: 100 })).toBeNull());
});
