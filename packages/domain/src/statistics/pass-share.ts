import { InputError, requireNotNegative, requireShare } from '../kernel/input.ts';
import type { Shapes } from './beta-binomial.ts';
import { requirePassed } from './binomial.ts';
import { deviateOf } from './quantiles.ts';

/** What was expected before anything was counted: a share (0 to 1), worth as much as `weight` tries (0 or more, not necessarily whole). */
export interface SharePrior {
  share: number;
  weight: number;
}

export interface PassShareInput {
  passed: number;
  tried: number;
  /** Of the interval, two-sided, above 0 and below 1. */
  confidence: number;
  prior?: SharePrior;
}

export interface PassShare {
  /** The posterior mean; null where nothing was tried and nothing expected, since any figure would be made up. */
  share: number | null;
  /** Ends of the Wilson interval of what was counted; the prior does not narrow it. 0 and 1 where nothing was tried. */
  low: number;
  high: number;
}

function requirePrior(prior: SharePrior): SharePrior {
  requireShare('prior.share', prior.share);
  requireNotNegative('prior.weight', prior.weight);
  return prior;
}

function wilsonInterval(passed: number, tried: number, deviate: number): { low: number; high: number } {
  const share = passed / tried;
  const square = (deviate * deviate) / tried;
  const middle = share + square / 2;
  const half = deviate * Math.sqrt((share * (1 - share)) / tried + square / (4 * tried));
  // At the ends the interval reaches exactly 0 or 1; rounding would leave it a hair beside.
  return {
    low: passed === 0 ? 0 : (middle - half) / (1 + square),
    high: passed === tried ? 1 : (middle + half) / (1 + square),
  };
}

/**
 * The share that passes, learned from `passed` of `tried`: with a prior the mean of the posterior Beta(passed + share · weight,
 * tried − passed + (1 − share) · weight), without one passed / tried; and the two-sided Wilson interval of the counts alone, so that a screen
 * says what was seen and not what was believed. Throws InputError naming counts that are negative, no whole numbers or more passed than
 * tried, a share outside 0 to 1, a negative weight, or a confidence of 0 or 1.
 * Source of the interval: NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1.
 */
export function passShare({ passed, tried, confidence, prior }: PassShareInput): PassShare {
  requirePassed(passed, tried);
  const deviate = deviateOf(confidence);
  const { share, weight } = prior === undefined ? { share: 0, weight: 0 } : requirePrior(prior);
  const interval = tried === 0 ? { low: 0, high: 1 } : wilsonInterval(passed, tried, deviate);
  return { share: tried + weight === 0 ? null : (passed + share * weight) / (tried + weight), ...interval };
}

/**
 * The shapes of the posterior that passShare takes the mean of, for the beta-binomial of what to start. Throws InputError as passShare does,
 * and naming `prior` where a shape would be 0 (only passes, or only failures, and a prior as sure): such a share leaves no doubt to reckon with.
 */
export function posteriorShapes({
  passed,
  tried,
  prior,
}: {
  passed: number;
  tried: number;
  prior: SharePrior;
}): Shapes {
  requirePassed(passed, tried);
  const { share, weight } = requirePrior(prior);
  const shapes = { alpha: passed + share * weight, beta: tried - passed + (1 - share) * weight };
  if (shapes.alpha === 0 || shapes.beta === 0)
    throw new InputError('prior', 'must leave room for both passing and failing', { ...shapes });
  return shapes;
}
