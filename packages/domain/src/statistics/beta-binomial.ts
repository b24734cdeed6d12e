import { requirePositive, requireWhole } from '../kernel/input.ts';
import { MOST_COUNTED } from './binomial.ts';
import { logBetaPower } from './incomplete-beta.ts';

/** What is left out of a sum when it can no longer change its last digit. */
const NEGLIGIBLE = 1e-17;

/** A share that is itself uncertain: a beta distribution, for instance of what was learned. Both above 0, not necessarily whole. */
export interface Shapes {
  alpha: number;
  beta: number;
}

/** Returns the shapes. Throws InputError naming the one that is not above 0. */
export function requireShapes({ alpha, beta }: Shapes): Shapes {
  return { alpha: requirePositive('alpha', alpha), beta: requirePositive('beta', beta) };
}

// The powers of x cancel between the three terms, so x is put where none of them is far from its peak: no digits are lost.
function probability(count: number, tried: number, { alpha, beta }: Shapes): number {
  const failed = tried - count;
  const sum = tried + alpha + beta;
  const x = (count + alpha) / sum;
  const y = (failed + beta) / sum;
  const prior = logBetaPower(alpha, beta, x, y);
  const posterior = logBetaPower(count + alpha, failed + beta, x, y);
  return Math.exp(prior - posterior + logBinomialTerm(count, failed, x, y));
}

// log of C(count + failed, count) x^count y^failed.
function logBinomialTerm(count: number, failed: number, x: number, y: number): number {
  if (count === 0) return failed * Math.log1p(-x);
  if (failed === 0) return count * Math.log1p(-y);
  const tried = count + failed;
  return logBetaPower(count, failed, x, y) + Math.log(tried / count) - Math.log(failed);
}

// The probability of `most` successes or fewer. Summed from a term near the peak to both sides, each term from the one before: all are positive, so
// nothing cancels, and the first is never so small that it is taken for 0 while the others are not.
function sumUpTo(most: number, tried: number, { alpha, beta }: Shapes): number {
  const start = Math.min(most, Math.floor(tried * (alpha / (alpha + beta))));
  const first = probability(start, tried, { alpha, beta });
  const growth = (count: number) => ((tried - count) * (count + alpha)) / ((count + 1) * (tried - count - 1 + beta));
  // Only where both shapes are 1 or more does a falling term promise that all further ones are smaller still.
  const onePeak = alpha >= 1 && beta >= 1;
  let sum = first;
  for (let count = start - 1, term = first; count >= 0; count -= 1) {
    const ratio = 1 / growth(count);
    term *= ratio;
    sum += term;
    if (onePeak && ratio < 1 && term * count < sum * NEGLIGIBLE) break;
  }
  for (let count = start + 1, term = first; count <= most; count += 1) {
    const ratio = growth(count - 1);
    term *= ratio;
    sum += term;
    if (onePeak && ratio < 1 && term * (most - count) < sum * NEGLIGIBLE) break;
  }
  return Math.min(1, sum);
}

/** The probability of fewer than `atLeast` (1 to tried) successes, to the digits of its own size. Not checked. Takes time with atLeast. */
export function betaBinomialShortfall(atLeast: number, tried: number, shapes: Shapes): number {
  return sumUpTo(atLeast - 1, tried, shapes);
}

/**
 * The probability of at least `atLeast` successes in `tried` tries whose share of success is itself drawn from a beta distribution with the
 * shapes alpha and beta. Exact: the terms are summed on the side of the mean where the answer is small. Takes time with the count summed over.
 * Throws InputError naming a count that is negative or no whole number, or a shape that is not above 0.
 */
export function betaBinomialUpperTail({
  atLeast,
  tried,
  alpha,
  beta,
}: { atLeast: number; tried: number } & Shapes): number {
  requireWhole('atLeast', atLeast, 0, MOST_COUNTED);
  requireWhole('tried', tried, 0, MOST_COUNTED);
  requireShapes({ alpha, beta });
  if (atLeast === 0) return 1;
  if (atLeast > tried) return 0;
  const mean = tried * (alpha / (alpha + beta));
  if (atLeast <= mean) return 1 - betaBinomialShortfall(atLeast, tried, { alpha, beta });
  // Counted in failures, the upper side is a lower one.
  return sumUpTo(tried - atLeast, tried, { alpha: beta, beta: alpha });
}
