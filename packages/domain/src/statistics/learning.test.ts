import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { lossRate } from './loss-rate.ts';
import { passShare, posteriorShapes } from './pass-share.ts';
import { survivalCurve } from './survival-curve.ts';
import { timeToQuantiles } from './time-to-quantiles.ts';

const counts = fc
  .tuple(fc.nat(5000), fc.nat(5000))
  .map(([a, b]) => ({ passed: Math.min(a, b), tried: Math.max(a, b) }));

describe('the share that passes', () => {
  it('is unknown where nothing was tried and nothing expected', () => {
    expect(passShare({ passed: 0, tried: 0, confidence: 0.9 })).toEqual({ share: null, low: 0, high: 1 });
    expect(passShare({ passed: 0, tried: 0, confidence: 0.9, prior: { share: 0.4, weight: 0 } }).share).toBeNull();
  });

  it('starts from the prior and moves to what is counted', () => {
    expect(passShare({ passed: 0, tried: 0, confidence: 0.9, prior: { share: 0.6, weight: 20 } }).share).toBeCloseTo(
      0.6,
      15,
    );
    expect(passShare({ passed: 9, tried: 10, confidence: 0.9, prior: { share: 0.6, weight: 20 } }).share).toBeCloseTo(
      0.7,
      15,
    );
    expect(posteriorShapes({ passed: 9, tried: 10, prior: { share: 0.6, weight: 20 } })).toEqual({
      alpha: 21,
      beta: 9,
    });
  });

  it('has an interval of the counts alone, whatever was expected', () => {
    const { low, high } = passShare({ passed: 4, tried: 20, confidence: 0.95 });
    expect(passShare({ passed: 4, tried: 20, confidence: 0.95, prior: { share: 0.9, weight: 1000 } })).toMatchObject({
      low,
      high,
    });
  });

  it('lies in its interval, within 0 and 1, which shrinks as confidence falls', () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ({ passed, tried }, confidence) => {
        fc.pre(tried > 0);
        const { share, low, high } = passShare({ passed, tried, confidence });
        const narrower = passShare({ passed, tried, confidence: confidence / 2 });
        return (
          share !== null &&
          low >= 0 &&
          low <= share &&
          share <= high &&
          high <= 1 &&
          narrower.high - narrower.low <= high - low
        );
      }),
    );
  });

  it.each([
    [{ passed: 3, tried: 2, confidence: 0.9 }, 'passed'],
    [{ passed: -1, tried: 2, confidence: 0.9 }, 'passed'],
    [{ passed: 1, tried: 2.5, confidence: 0.9 }, 'tried'],
    [{ passed: 1, tried: 2, confidence: 1 }, 'confidence'],
    [{ passed: 1, tried: 2, confidence: 90 }, 'confidence'],
    [{ passed: 1, tried: 2, confidence: 0.9, prior: { share: 1.2, weight: 1 } }, 'prior.share'],
    [{ passed: 1, tried: 2, confidence: 0.9, prior: { share: 0.2, weight: -1 } }, 'prior.weight'],
  ])('refuses %j and names what is wrong', (input, argument) => {
    expect(() => passShare(input)).toThrow(expect.objectContaining({ name: 'InputError', argument }));
  });

  it('refuses shapes without doubt', () => {
    expect(() => posteriorShapes({ passed: 2, tried: 2, prior: { share: 1, weight: 5 } })).toThrow(InputError);
  });
});

describe('survival', () => {
  it('has no steps without deaths, and no median', () => {
    expect(survivalCurve([])).toEqual({ steps: [], medianDays: null });
    expect(survivalCurve([{ days: 30, died: false, units: 50 }])).toEqual({ steps: [], medianDays: null });
  });

  it('counts who leaves alive on a day of deaths as at risk on it', () => {
    expect(
      survivalCurve([
        { days: 10, died: false },
        { days: 10, died: true },
      ]).steps,
    ).toMatchObject([{ days: 10, atRisk: 2, died: 1, survival: 0.5 }]);
  });

  it('has its median on the day with exactly a half left, also after many small steps', () => {
    const each = Array.from({ length: 60 }, (_, day) => ({ days: day + 1, died: true, units: 7 }));
    expect(survivalCurve(each).medianDays).toBe(30);
  });

  it('ends without an error of nothing when the last have died', () => {
    expect(survivalCurve([{ days: 3, died: true, units: 4 }]).steps).toEqual([
      { days: 3, atRisk: 4, died: 4, survival: 0, standardError: 0 },
    ]);
  });

  const observation = fc.record({ days: fc.nat(40), died: fc.boolean(), units: fc.integer({ min: 1, max: 5 }) });
  it('is the same for lots as for each of their plants by itself, in any order', () => {
    fc.assert(
      fc.property(fc.array(observation, { maxLength: 30 }), (lots) => {
        const plants = lots.flatMap(({ days, died, units }) => Array.from({ length: units }, () => ({ days, died })));
        expect(survivalCurve(plants.reverse())).toEqual(survivalCurve(lots));
      }),
    );
  });

  it('is the plain share alive where nobody left the watch', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(40), { minLength: 1, maxLength: 60 }), (days) => {
        for (const step of survivalCurve(days.map((day) => ({ days: day, died: true }))).steps) {
          const share = days.filter((day) => day > step.days).length / days.length;
          expect(step.survival).toBeCloseTo(share, 12);
          expect(step.standardError).toBeCloseTo(Math.sqrt((share * (1 - share)) / days.length), 12);
        }
      }),
    );
  });

  it.each([
    [{ days: -1, died: true }, 'days'],
    [{ days: Number.NaN, died: true }, 'days'],
    [{ days: 1, died: true, units: 0.5 }, 'units'],
  ])('refuses %j and names what is wrong', (row, argument) => {
    expect(() => survivalCurve([row])).toThrow(expect.objectContaining({ name: 'InputError', argument }));
  });
});

describe('time to ready', () => {
  const batches = [90, 100, 110, 120].map((days) => ({ days, reached: true }));

  it('is read off the share that has got there', () => {
    expect(timeToQuantiles(batches, [0.5, 0.1, 0.9, 0, 1])).toEqual([100, 90, 120, 0, 120]);
  });

  it('is later, not earlier, when unfinished batches are counted', () => {
    expect(timeToQuantiles([...batches, { days: 115, reached: false, units: 4 }], [0.1, 0.5, 0.9])).toEqual([
      90, 120, 120,
    ]);
    expect(timeToQuantiles([...batches, { days: 200, reached: false, units: 4 }], [0.1, 0.5, 0.9])).toEqual([
      90,
      120,
      null,
    ]);
  });

  it('refuses a share above 1', () => {
    expect(() => timeToQuantiles(batches, [50])).toThrow(/^shares: /);
  });
});

describe('the rate of loss', () => {
  it('is unknown without a day of exposure', () => {
    expect(lossRate({ losses: 0, plantDays: 0 })).toEqual({ rate: null, low: 0, high: null });
  });

  it('cannot be excluded to be 3 in n after none in n, at 95 % from one side', () => {
    const { rate, low, high } = lossRate({ losses: 0, plantDays: 1000, confidence: 0.9 });
    expect([rate, low]).toEqual([0, 0]);
    expect(high).toBeCloseTo(-Math.log(0.05) / 1000, 12);
  });

  it('with a prior is the posterior, whose interval holds it', () => {
    const { rate, low, high } = lossRate({ losses: 2, plantDays: 3000, prior: { losses: 1, plantDays: 1000 } });
    expect(rate).toBeCloseTo(3 / 4000, 15);
    expect(low).toBeCloseTo(0.6186721228956 / 4000, 12);
    expect(high).toBeGreaterThan(3 / 4000);
  });

  it.each([
    [{ losses: 1.5, plantDays: 10 }, 'losses'],
    [{ losses: 1, plantDays: -10 }, 'plantDays'],
    [{ losses: 1, plantDays: 10, confidence: 95 }, 'confidence'],
    [{ losses: 1, plantDays: 10, prior: { losses: 0, plantDays: 5 } }, 'prior.losses'],
  ])('refuses %j and names what is wrong', (input, argument) => {
    expect(() => lossRate(input)).toThrow(expect.objectContaining({ name: 'InputError', argument }));
  });
});
