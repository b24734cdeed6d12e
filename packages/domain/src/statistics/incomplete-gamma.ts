import type { Tails } from './incomplete-beta.ts';
import { halfDeviance, stirlingError } from './log-gamma.ts';

const TWO_PI = 2 * Math.PI;
const MOST_TERMS = 1_000_000;

/** log of x^shape e^−x / Γ(shape), for shape > 0 and x > 0: by deviances, as the term of the beta distribution is. */
export function logGammaPower(shape: number, x: number): number {
  return 0.5 * Math.log(shape / TWO_PI) - stirlingError(shape) - halfDeviance(shape, x);
}

// DLMF 8.11.4: all terms are positive, so nothing cancels.
function series(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    term *= x / (shape + n);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum;
}

// DLMF 8.9.2, contracted to its even part, by Lentz's method.
function fraction(shape: number, x: number): number {
  let denominator = x + 1 - shape;
  let value = denominator === 0 ? Number.MIN_VALUE : denominator;
  let c = value;
  let d = 0;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const numerator = n * (shape - n);
    denominator += 2;
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value;
}

/**
 * The share of a gamma distribution with this shape (above 0) and rate 1 below x (0 or more) and above it: the regularised incomplete
 * gamma functions. Not checked. Source: NIST Digital Library of Mathematical Functions, 8.9 and 8.11.
 */
export function gammaTails(shape: number, x: number): Tails {
  if (x <= 0) return { lower: 0, upper: 1 };
  const power = Math.exp(logGammaPower(shape, x));
  if (x < shape + 1) {
    const lower = power === 0 ? 0 : Math.min(1, power * series(shape, x));
    return { lower, upper: 1 - lower };
  }
  const upper = power === 0 ? 0 : Math.min(1, power / fraction(shape, x));
  return { lower: 1 - upper, upper };
}
