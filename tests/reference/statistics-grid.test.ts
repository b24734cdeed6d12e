// Our own distributions against the beta and binomial distributions of the stdlib library (https://stdlib.io), which come from other formulas.
import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import libraryBetaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import {
  betaBinomialUpperTail,
  betaQuantile,
  binomialUpperTail,
  incompleteBeta,
  unitsToStart,
} from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

const relative = (value: number, expected: number) =>
  value === expected ? 0 : Math.abs(value - expected) / Math.max(Math.abs(expected), 1e-290);
const SHARES = [0, 1e-9, 1e-6, 1e-4, 0.01, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.8, 0.9, 0.99, 0.9999, 1 - 1e-9, 1];
const TRIED = [1, 2, 5, 20, 50, 100, 400, 1000, 10_000, 100_000];

/** Counts from the one end to the other and around what is expected, where a plan looks. */
function countsFor(tried: number, share: number): number[] {
  const mean = tried * share;
  const deviation = Math.sqrt(mean * (1 - share));
  const around = [-6, -3, -1, 0, 1, 3, 6].map((deviations) => Math.round(mean + deviations * deviation));
  return [...new Set([0, 1, 2, ...around, tried - 1, tried])].filter((count) => count >= 0 && count <= tried);
}

const cases = SHARES.flatMap((share) =>
  TRIED.flatMap((tried) => countsFor(tried, share).map((atLeast) => ({ share, tried, atLeast }))),
);

/** Differences larger than allowed, so that a failing test shows where. */
const off = <T>(rows: readonly T[], differenceOf: (row: T) => number, allowed: number) =>
  rows.filter((row) => !(differenceOf(row) <= allowed));

describe('binomial upper tails', () => {
  it('are tried on more than a thousand cases', () => {
    expect(cases.length).toBeGreaterThan(1000);
  });

  it('agree with the library to 1e-11 of their value, in far tails too', () => {
    const differenceOf = ({ share, tried, atLeast }: (typeof cases)[number]) => {
      const expected = atLeast === 0 ? 1 : betaCdf(share, atLeast, tried - atLeast + 1);
      return relative(binomialUpperTail({ atLeast, tried, share }), expected);
    };
    expect(off(cases, differenceOf, 1e-11)).toEqual([]);
  });

  it('are what its binomial distribution leaves', () => {
    const differenceOf = ({ share, tried, atLeast }: (typeof cases)[number]) =>
      Math.abs(binomialUpperTail({ atLeast, tried, share }) - (1 - binomialCdf(atLeast - 1, tried, share)));
    expect(off(cases, differenceOf, 1e-11)).toEqual([]);
  });
});

describe('units to start', () => {
  it('are the fewest by the library as well', () => {
    const wrong = [1, 7, 50, 100, 990, 20_000].flatMap((wanted) =>
      [0.05, 0.3, 0.5, 0.8, 0.99].flatMap((success) =>
        [0.5, 0.9, 0.95, 0.99].flatMap((confidence) => {
          const units = unitsToStart({ wanted, success, confidence }) ?? 0;
          const reached = (tried: number) => 1 - binomialCdf(wanted - 1, tried, success);
          const right = reached(units) >= confidence - 1e-12 && (units === wanted || reached(units - 1) < confidence);
          return right ? [] : [{ wanted, success, confidence, units }];
        }),
      ),
    );
    expect(wrong).toEqual([]);
  });
});

const SHAPES = [0.5, 1, 1.5, 2, 10, 68.25, 400, 5000, 99_999.5];
const quantiles = SHAPES.flatMap((alpha) =>
  SHAPES.flatMap((beta) =>
    [0, 1e-9, 1e-4, 0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975, 0.9999, 1 - 1e-9, 1].map((share) => ({
      alpha,
      beta,
      share,
    })),
  ),
);

describe('beta quantiles', () => {
  it('are tried on more than a thousand cases', () => {
    expect(quantiles.length).toBeGreaterThan(1000);
  });

  it('agree with the library to 1e-9 of their value', () => {
    expect(
      off(quantiles, (row) => relative(betaQuantile(row), libraryBetaQuantile(row.share, row.alpha, row.beta)), 1e-9),
    ).toEqual([]);
  });

  it('come from a distribution that agrees with the library to 1e-11', () => {
    const differenceOf = ({ alpha, beta, share }: (typeof quantiles)[number]) => {
      const x = betaQuantile({ alpha, beta, share });
      return Math.abs(incompleteBeta({ x, alpha, beta }).lower - betaCdf(x, alpha, beta));
    };
    expect(off(quantiles, differenceOf, 1e-11)).toEqual([]);
  });
});

/** With whole shapes every term is a quotient of whole numbers: C(k + a − 1, k) C(n − k + b − 1, n − k) / C(n + a + b − 1, n), summed without rounding. */
function exactTail(atLeast: number, tried: number, alpha: number, beta: number): number {
  const choose = (n: number, k: number) => {
    let product = 1n;
    for (let i = 1; i <= k; i += 1) product = (product * BigInt(n - k + i)) / BigInt(i);
    return product;
  };
  let sum = 0n;
  for (let k = atLeast; k <= tried; k += 1) sum += choose(k + alpha - 1, k) * choose(tried - k + beta - 1, tried - k);
  const SCALE = 10n ** 60n;
  return Number((sum * SCALE) / choose(tried + alpha + beta - 1, tried)) / 1e60;
}

describe('beta-binomial upper tails', () => {
  it('agree with sums of whole numbers to 1e-12 of their value', () => {
    const rows = [1, 2, 9, 40, 120].flatMap((tried) =>
      [1, 2, 7, 30].flatMap((alpha) =>
        [1, 3, 25].flatMap((beta) =>
          [...new Set([1, Math.ceil(tried / 3), Math.ceil(tried / 2), tried])].map((atLeast) => ({
            tried,
            alpha,
            beta,
            atLeast,
          })),
        ),
      ),
    );
    expect(
      off(
        rows,
        (row) => relative(betaBinomialUpperTail(row), exactTail(row.atLeast, row.tried, row.alpha, row.beta)),
        1e-12,
      ),
    ).toEqual([]);
  });

  it('narrow down to the library’s binomial where the share is as good as known', () => {
    const rows = [0.1, 0.5, 0.9].flatMap((share) =>
      countsFor(100_000, share)
        .filter((count) => Math.abs(count - 100_000 * share) < 1000)
        .map((atLeast) => ({ share, atLeast })),
    );
    const differenceOf = ({ share, atLeast }: { share: number; atLeast: number }) =>
      Math.abs(
        betaBinomialUpperTail({ atLeast, tried: 100_000, alpha: share * 1e13, beta: (1 - share) * 1e13 }) -
          (1 - binomialCdf(atLeast - 1, 100_000, share)),
      );
    expect(off(rows, differenceOf, 1e-6)).toEqual([]);
  });
});
