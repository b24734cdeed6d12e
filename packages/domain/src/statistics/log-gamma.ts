import { requirePositive } from '../kernel/input.ts';

const LOG_SQRT_2_PI = Math.log(2 * Math.PI) / 2;
const ONE_LESS_EULER = 0.42278433509846713;

/** ζ(k) − 1 for k = 2, 3, …: the coefficients of log Γ(2 + w) around w = 0 (DLMF 5.7.3). */
const ZETA_LESS_ONE = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853, 0.0004941886041194645,
  0.0002460865533080483, 0.00012271334757848915, 6.124813505870483e-5, 3.058823630702049e-5, 1.528225940865187e-5,
  7.637197637899763e-6, 3.81729326499984e-6, 1.908212716553939e-6, 9.539620338727962e-7, 4.769329867878064e-7,
  2.38450502727733e-7, 1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.4901554828365043e-8,
  7.45071178983543e-9, 3.725334024788457e-9, 1.862659723513049e-9, 9.313274324196682e-10, 4.656629065033784e-10,
] as const;

/** B(2k) / (2k (2k − 1)) for k = 1, 2, …: the coefficients of Stirling's series (DLMF 5.11.1). */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156, -3617 / 122_400] as const;
/** From here on eight terms of Stirling's series leave less than the last bit. */
const STIRLING_FROM = 12;

/** log Γ(2 + w) for |w| ≤ 0.5. It has no cancellation where Γ is 1, so that logGamma keeps its digits around 1 and 2. */
function aroundTwo(w: number): number {
  let sum = 0;
  let power = -w;
  for (const [index, coefficient] of ZETA_LESS_ONE.entries()) {
    power *= -w;
    sum += (coefficient * power) / (index + 2);
  }
  return w * ONE_LESS_EULER + sum;
}

function stirlingSeries(x: number): number {
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k -= 1) sum = sum / (x * x) + (STIRLING[k] ?? 0);
  return sum / x;
}

/**
 * The natural logarithm of the gamma function of x > 0, to about 1e-14 of its value. Throws InputError where x is not above zero.
 * Source: NIST Digital Library of Mathematical Functions, 5.7.3 near 2, 5.5.1 down to there, 5.11.1 beyond.
 */
export function logGamma(x: number): number {
  requirePositive('x', x);
  if (x >= STIRLING_FROM) return (x - 0.5) * Math.log(x) - x + LOG_SQRT_2_PI + stirlingSeries(x);
  if (x < 0.5) return aroundTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return aroundTwo(x - 1) - Math.log1p(x - 1);
  let product = 1;
  let rest = x;
  while (rest > 2.5) {
    rest -= 1;
    product *= rest;
  }
  return aroundTwo(rest - 2) + Math.log(product);
}

/**
 * What Stirling's formula leaves of log Γ(x + 1): log Γ(x + 1) − (x + ½) log x + x − ½ log 2π, for x > 0. Differences of it, instead of
 * differences of logGamma, keep the digits of a binomial term with a hundred thousand tries.
 * Source: C. Loader, "Fast and accurate computation of binomial probabilities", 2000.
 */
export function stirlingError(x: number): number {
  if (x >= STIRLING_FROM) return stirlingSeries(x);
  return logGamma(x + 1) - (x + 0.5) * Math.log(x) + x - LOG_SQRT_2_PI;
}

/**
 * x log(x / mean) + mean − x, half the deviance of one count, for x > 0 and mean > 0: never negative, and computed by its series where x
 * is near the mean, since the three terms would cancel there. Source: as for stirlingError.
 */
export function halfDeviance(x: number, mean: number): number {
  const difference = x - mean;
  if (Math.abs(difference) >= 0.1 * (x + mean)) {
    // The quotient alone can overflow where the mean is next to nothing.
    return x * (Math.log(x) - Math.log(mean)) + mean - x;
  }
  const ratio = difference / (x + mean);
  let sum = difference * ratio;
  let term = 2 * x * ratio;
  for (let j = 3; ; j += 2) {
    term *= ratio * ratio;
    const next = sum + term / j;
    if (next === sum) return sum;
    sum = next;
  }
}
