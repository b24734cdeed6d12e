import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../kernel/input.ts';
import { learnShare } from './learn-share.ts';

const settings = { evidenceLimit: 400, confidence: 0.95 };
const prior = { share: 0.75, weight: 20 };

describe('learnShare', () => {
  test("with nothing tried, the protocol's figure alone remains", () => {
    expect(learnShare(prior, { tried: 0, passed: 0, batches: 0 }, settings)).toEqual({
      tried: 0,
      passed: 0,
      batches: 0,
      alpha: 15,
      beta: 5,
      share: 0.75,
      low: 0,
      high: 1,
      priorShare: 0.75,
      priorWeight: 20,
    });
  });

  test("counts are added to the figure's weight", () => {
    // (0.75 · 20 + 18) / (20 + 24) by hand.
    expect(learnShare(prior, { tried: 24, passed: 18, batches: 3 }, settings)).toMatchObject({
      alpha: 33,
      beta: 11,
      share: 0.75,
    });
  });

  test('counts beyond the limit weigh as much as the limit and keep their share', () => {
    expect(learnShare(prior, { tried: 4000, passed: 1000, batches: 9 }, settings)).toMatchObject({
      alpha: 115,
      beta: 305,
      share: 115 / 420,
    });
  });

  test('the interval is that of the counts as they are, not scaled down', () => {
    // NIST/SEMATECH e-Handbook 7.2.4.1, by its formula: 340 of 400 at 95 %.
    const { low, high } = learnShare(
      prior,
      { tried: 400, passed: 340, batches: 1 },
      { ...settings, evidenceLimit: 10 },
    );
    expect(low).toBeCloseTo(0.811686, 6);
    expect(high).toBeCloseTo(0.881655, 6);
  });

  test('a share that is sure keeps a hair of doubt', () => {
    const { alpha, beta, share } = learnShare({ share: 1, weight: 20 }, { tried: 0, passed: 0, batches: 0 }, settings);
    expect({ alpha, sure: share > 0.999_999_999, doubt: beta > 0 }).toEqual({ alpha: 20, sure: true, doubt: true });
  });

  test.each([
    ['passed', prior, { tried: 3, passed: 4, batches: 1 }, settings],
    ['tried', prior, { tried: -1, passed: 0, batches: 1 }, settings],
    ['prior.share', { share: 80, weight: 20 }, { tried: 3, passed: 2, batches: 1 }, settings],
    ['prior.weight', { share: 0.8, weight: 0 }, { tried: 3, passed: 2, batches: 1 }, settings],
    ['evidenceLimit', prior, { tried: 3, passed: 2, batches: 1 }, { ...settings, evidenceLimit: 0 }],
    ['confidence', prior, { tried: 3, passed: 2, batches: 1 }, { ...settings, confidence: 1 }],
  ])('refuses what cannot be true, naming %s', (argument, wrongPrior, evidence, wrongSettings) => {
    expect(() => learnShare(wrongPrior, evidence, wrongSettings)).toThrow(
      expect.objectContaining({ name: 'InputError', argument }) as unknown as InputError,
    );
  });

  test('the posterior lies between the figure and what was counted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (share, weight, tried, part) => {
          const passed = Math.round(part * tried);
          const learned = learnShare({ share, weight }, { tried, passed, batches: 1 }, settings).share;
          const counted = passed / tried;
          expect(learned).toBeGreaterThanOrEqual(Math.min(share, counted) - 1e-9);
          expect(learned).toBeLessThanOrEqual(Math.max(share, counted) + 1e-9);
        },
      ),
    );
  });
});
