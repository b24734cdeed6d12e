import { passShare, survivalCurve } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

describe('the Wilson interval at 95 % (NIST/SEMATECH e-Handbook of Statistical Methods 7.2.4.1; figures derived from its formula)', () => {
  it.each([
    [4, 20, 0.080658, 0.416017],
    [340, 400, 0.811686, 0.881655],
    [0, 20, 0, 0.161125],
  ])('of %d in %d is %d to %d', (passed, tried, low, high) => {
    const interval = passShare({ passed, tried, confidence: 0.95 });
    expect(interval.low).toBeCloseTo(low, 6);
    expect(interval.high).toBeCloseTo(high, 6);
    expect(interval.share).toBe(passed / tried);
  });
});

/*
 * E. J. Freireich and others 1963, Blood 21:699–716; E. A. Gehan 1965, Biometrika 52:203–223: weeks of remission of 21 patients under 6-MP, and of 21
 * under placebo.
 */
const relapsed = [6, 6, 6, 7, 10, 13, 16, 22, 23];
const stillWell = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
const placebo = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];

describe('the Kaplan–Meier curve', () => {
  const treated = [
    ...relapsed.map((days) => ({ days, died: true })),
    ...stillWell.map((days) => ({ days, died: false })),
  ];

  it('of the 6-MP arm has the published steps with Greenwood’s errors', () => {
    const steps = survivalCurve(treated).steps.map(({ days, atRisk, died, survival, standardError }) => [
      days,
      atRisk,
      died,
      survival.toFixed(3),
      standardError.toFixed(4),
    ]);
    expect(steps).toEqual([
      [6, 21, 3, '0.857', '0.0764'],
      [7, 17, 1, '0.807', '0.0869'],
      [10, 15, 1, '0.753', '0.0963'],
      [13, 12, 1, '0.690', '0.1068'],
      [16, 11, 1, '0.627', '0.1141'],
      [22, 7, 1, '0.538', '0.1282'],
      [23, 6, 1, '0.448', '0.1346'],
    ]);
  });

  it('has its medians at 23 and, for the placebo arm, at 8', () => {
    expect(survivalCurve(treated).medianDays).toBe(23);
    expect(survivalCurve(placebo.map((days) => ({ days, died: true }))).medianDays).toBe(8);
  });
});
