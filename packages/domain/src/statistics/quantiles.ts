import { InputError, requirePositive, requireShare } from '../kernel/input.ts';
import { betaTails, logBetaPower } from './incomplete-beta.ts';
import { gammaTails, logGammaPower } from './incomplete-gamma.ts';
import { solveTail } from './solve-tail.ts';

const SQRT_2_PI = Math.sqrt(2 * Math.PI);
/** Beyond this logarithm a number is no longer told from 0. */
const LEAST_LOG = -745;

function upperNormal(t: number): number {
  const { upper } = gammaTails(0.5, (t * t) / 2);
  return upper / 2;
}

/**
 * The point of the standard normal distribution below which a share (0 to 1) of it lies: −Infinity for 0, Infinity for 1.
 * Throws InputError for a share outside 0 to 1. Solved from the distribution itself (NIST DLMF 7.18 and 8.4.6), to about 1e-15.
 */
export function normalQuantile(share: number): number {
  requireShare('share', share);
  if (share === 0) return -Infinity;
  if (share === 1) return Infinity;
  if (share === 0.5) return 0;
  const near = Math.min(share, 1 - share);
  const start = -Math.sqrt(-2 * Math.log(near));
  const t = solveTail(near, start, -40, 0, (at) => ({
    tail: upperNormal(-at),
    density: Math.exp(-(at * at) / 2) / SQRT_2_PI,
  }));
  return share < 0.5 ? t : -t;
}

/** The two-sided normal deviate of a confidence above 0 and below 1: 1.96 for 0.95. Throws InputError naming `confidence` otherwise. */
export function deviateOf(confidence: number): number {
  requireConfidence(confidence);
  return -normalQuantile((1 - confidence) / 2);
}

/** Returns a confidence above 0 and below 1: certainty has no interval. Throws InputError naming it otherwise. */
export function requireConfidence(confidence: number): number {
  requireShare('confidence', confidence);
  if (confidence === 0 || confidence === 1) throw new InputError('confidence', 'must lie between 0 and 1');
  return confidence;
}

// In the logit of x both ends of the distribution have room, and the logarithm of the tail is concave.
function lowBetaQuantile(share: number, alpha: number, beta: number): { x: number; y: number } {
  const sides = (t: number) => ({ x: 1 / (1 + Math.exp(-t)), y: 1 / (1 + Math.exp(t)) });
  const slope = (t: number) => {
    const { x, y } = sides(t);
    return { tail: betaTails(alpha, beta, x, y).lower, density: Math.exp(logBetaPower(alpha, beta, x, y)) };
  };
  const least = LEAST_LOG + 40;
  if (slope(least).tail >= share) return { x: 0, y: 1 };
  if (slope(-least).tail <= share) return { x: 1, y: 0 };
  return sides(solveTail(share, Math.log(alpha / beta), least, -least, slope));
}

/**
 * The point of a beta distribution with shapes alpha and beta (both above 0) below which a share (0 to 1) of it lies. Answers 0 (or 1) where
 * it lies nearer to that end than a number can say. Throws InputError for a share outside 0 to 1 and shapes not above 0.
 * Solved from incompleteBeta by Newton's method, to about 1e-13 of its value.
 */
export function betaQuantile({ share, alpha, beta }: { share: number; alpha: number; beta: number }): number {
  requireShare('share', share);
  requirePositive('alpha', alpha);
  requirePositive('beta', beta);
  if (share === 0 || share === 1) return share;
  return share <= 0.5 ? lowBetaQuantile(share, alpha, beta).x : lowBetaQuantile(1 - share, beta, alpha).y;
}

/**
 * The point of a gamma distribution with this shape (above 0) and rate 1 below which a share (0 to 1) of it lies: Infinity for 1, and 0 where
 * it lies nearer to 0 than a number can say. Throws InputError for a share outside 0 to 1 and a shape not above 0.
 * Solved from the incomplete gamma function (NIST DLMF 8.2) by Newton's method, to about 1e-13 of its value.
 */
export function gammaQuantile({ share, shape }: { share: number; shape: number }): number {
  requireShare('share', share);
  requirePositive('shape', shape);
  if (share === 0) return 0;
  if (share === 1) return Infinity;
  const density = (x: number) => Math.exp(logGammaPower(shape, x));
  if (gammaTails(shape, Math.exp(LEAST_LOG)).lower >= share) return 0;
  const logShape = Math.log(shape);
  const most = Math.max(logShape, 0) + 10;
  const log =
    share <= 0.5
      ? solveTail(share, logShape, LEAST_LOG, most, (t) => ({
          tail: gammaTails(shape, Math.exp(t)).lower,
          density: density(Math.exp(t)),
        }))
      : -solveTail(1 - share, -logShape, -most, -LEAST_LOG, (t) => ({
          tail: gammaTails(shape, Math.exp(-t)).upper,
          density: density(Math.exp(-t)),
        }));
  return Math.exp(log);
}
