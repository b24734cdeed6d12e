import { describe, expect, it } from 'vitest';
import { drawTests } from './tests-scale.ts';

const test = (testedOn: string, replicates: number[]) => ({
  testedOn,
  seedsPerReplicate: 100,
  replicates,
  meanShare: replicates.reduce((sum, each) => sum + each, 0) / replicates.length / 100,
});

describe('tests over time', () => {
  it('stand between gathering and today, the oldest first', () => {
    const { fromOn, points } = drawTests(
      [test('2026-05-01', [70]), test('2025-11-02', [90])],
      '2025-05-01',
      '2026-05-01',
    );
    expect([fromOn, points.map(({ x }) => Number(x.toFixed(2)))]).toEqual(['2025-05-01', [0.51, 1]]);
  });

  it('begin with the first of them where nobody knows the day of gathering', () => {
    expect(
      drawTests([test('2026-03-02', [70]), test('2026-01-01', [80])], null, '2026-05-01').points.map(({ x }) => x),
    ).toEqual([0, 0.5]);
  });

  it('span from the worst replicate to the best', () => {
    expect(drawTests([test('2026-05-01', [83, 95, 89, 89])], null, '2026-05-01').points).toMatchObject([
      { low: 0.83, mean: 0.89, high: 0.95 },
    ]);
  });
});
