import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaBinomialUpperTail } from './beta-binomial.ts';
import { binomialUpperTail } from './binomial.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { logGamma } from './log-gamma.ts';
import { betaQuantile, gammaQuantile, normalQuantile } from './quantiles.ts';

const shape = fc.double({ min: -3, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);
const inside = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
const relative = (value: number, expected: number) =>
  value === expected ? 0 : Math.abs(value - expected) / Math.abs(expected);

describe('the gamma function', () => {
  it('is the factorial at whole numbers', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n += 1) {
      expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(1e-14 * Math.max(1, Math.log(factorial)));
      factorial *= n;
    }
  });

  it('is the root of π at a half', () => {
    expect(relative(logGamma(0.5), Math.log(Math.PI) / 2)).toBeLessThan(1e-14);
  });

  it('keeps its digits beside 1 and 2, where its logarithm is next to nothing', () => {
    expect(
      relative(logGamma(1 + 2 ** -30), -0.5772156649015329 * 2 ** -30 + (Math.PI ** 2 / 12) * 2 ** -60),
    ).toBeLessThan(1e-13);
    expect(logGamma(1)).toBe(0);
    expect(logGamma(2)).toBe(0);
  });

  it('grows by the logarithm of x', () => {
    fc.assert(
      fc.property(
        shape,
        (x) => Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x)) <= 1e-13 * Math.max(1, Math.abs(logGamma(x + 1))),
      ),
    );
  });
});

describe('the beta distribution', () => {
  it('has nothing below 0 and everything below 1', () => {
    expect(incompleteBeta({ x: 0, alpha: 2, beta: 3 })).toEqual({ lower: 0, upper: 1 });
    expect(incompleteBeta({ x: 1, alpha: 2, beta: 3 })).toEqual({ lower: 1, upper: 0 });
  });

  it('is x to the power alpha where beta is 1', () => {
    fc.assert(
      fc.property(
        inside,
        shape,
        (x, alpha) => Math.abs(incompleteBeta({ x, alpha, beta: 1 }).lower - Math.exp(alpha * Math.log(x))) <= 1e-12,
      ),
    );
  });

  it('is mirrored when the shapes change places', () => {
    const mirrored = (x: number, alpha: number, beta: number) =>
      relative(
        incompleteBeta({ x, alpha, beta }).lower + Number.MIN_VALUE,
        incompleteBeta({ x: 1 - x, alpha: beta, beta: alpha }).upper + Number.MIN_VALUE,
      );
    // Quarters, so that 1 − x is exact.
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1023 }),
        shape,
        shape,
        (part, alpha, beta) => mirrored(part / 1024, alpha, beta) <= 1e-10,
      ),
    );
  });

  it('has as much below a quantile as was asked for', () => {
    const lowShare = fc.double({ min: 1e-9, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(
        lowShare,
        fc.double({ min: 0.2, max: 1e5, noNaN: true }),
        fc.double({ min: 0.2, max: 1e5, noNaN: true }),
        (share, alpha, beta) => {
          const x = betaQuantile({ share, alpha, beta });
          // Next to 1 a number is too coarse to say where the quantile lies.
          return x > 0.999 || relative(incompleteBeta({ x, alpha, beta }).lower, share) < 1e-9;
        },
      ),
    );
  });

  it('answers quantiles at both ends', () => {
    expect(betaQuantile({ share: 0, alpha: 2, beta: 3 })).toBe(0);
    expect(betaQuantile({ share: 1, alpha: 2, beta: 3 })).toBe(1);
    expect(betaQuantile({ share: 0.025, alpha: 1e-3, beta: 2 })).toBe(0);
  });
});

describe('the gamma and normal distributions', () => {
  it('have their quantiles where the exponential distribution and the tables say', () => {
    for (const share of [1e-9, 0.1, 0.5, 0.975])
      expect(relative(gammaQuantile({ share, shape: 1 }), -Math.log1p(-share))).toBeLessThan(1e-12);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 13);
    expect(normalQuantile(1e-12)).toBeCloseTo(-7.034483825301131, 12);
    expect([normalQuantile(0), normalQuantile(0.5), normalQuantile(1)]).toEqual([-Infinity, 0, Infinity]);
  });
});

describe('tails of counts', () => {
  it('know certainty: none asked, more asked than tried, a share of 0 and of 1', () => {
    expect(binomialUpperTail({ atLeast: 0, tried: 10, share: 0 })).toBe(1);
    expect(binomialUpperTail({ atLeast: 11, tried: 10, share: 1 })).toBe(0);
    expect(binomialUpperTail({ atLeast: 1, tried: 10, share: 0 })).toBe(0);
    expect(binomialUpperTail({ atLeast: 10, tried: 10, share: 1 })).toBe(1);
    expect(betaBinomialUpperTail({ atLeast: 0, tried: 10, alpha: 1, beta: 1 })).toBe(1);
    expect(betaBinomialUpperTail({ atLeast: 11, tried: 10, alpha: 1, beta: 1 })).toBe(0);
  });

  it('spread evenly where nothing is known of the share', () => {
    for (let atLeast = 1; atLeast <= 40; atLeast += 1) {
      expect(
        relative(betaBinomialUpperTail({ atLeast, tried: 40, alpha: 1, beta: 1 }), (41 - atLeast) / 41),
      ).toBeLessThan(1e-13);
    }
  });

  it('become those of a known share when the learned one is sure', () => {
    const known = binomialUpperTail({ atLeast: 75, tried: 100, share: 0.7 });
    expect(relative(betaBinomialUpperTail({ atLeast: 75, tried: 100, alpha: 7e10, beta: 3e10 }), known)).toBeLessThan(
      1e-6,
    );
  });

  it('and the two sides of a beta-binomial make one', () => {
    const counts = fc
      .tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }))
      .map(([a, b]) => ({ atLeast: Math.min(a, b), tried: Math.max(a, b) }));
    fc.assert(
      fc.property(counts, shape, shape, ({ atLeast, tried }, alpha, beta) => {
        const failures = betaBinomialUpperTail({ atLeast: tried - atLeast + 1, tried, alpha: beta, beta: alpha });
        return Math.abs(betaBinomialUpperTail({ atLeast, tried, alpha, beta }) + failures - 1) < 1e-9;
      }),
    );
  });
});

describe('what cannot be', () => {
  it.each([
    [() => logGamma(0), /^x: /],
    [() => incompleteBeta({ x: 1.1, alpha: 1, beta: 1 }), /^x: /],
    [() => incompleteBeta({ x: 0.5, alpha: 0, beta: 1 }), /^alpha: /],
    [() => betaQuantile({ share: Number.NaN, alpha: 1, beta: 1 }), /^share: /],
    [() => betaQuantile({ share: 0.5, alpha: 1, beta: -1 }), /^beta: /],
    [() => gammaQuantile({ share: 0.5, shape: 0 }), /^shape: /],
    [() => normalQuantile(1.2), /^share: /],
    [() => binomialUpperTail({ atLeast: 1.5, tried: 2, share: 0.5 }), /^atLeast: /],
    [() => binomialUpperTail({ atLeast: 1, tried: -2, share: 0.5 }), /^tried: /],
    [() => binomialUpperTail({ atLeast: 1, tried: 2, share: 50 }), /^share: /],
    [() => betaBinomialUpperTail({ atLeast: 1, tried: 2, alpha: Number.NaN, beta: 1 }), /^alpha: /],
  ])('is refused by name: %s', (call, message) => {
    expect(call).toThrow(message);
  });
});
