import { requireNotNegative, requirePositive, requireWhole } from '../kernel/input.ts';
import { MOST_COUNTED } from './binomial.ts';
import { gammaQuantile, requireConfidence } from './quantiles.ts';

export interface LossRateInput {
  /** Deaths counted: a whole number, 0 or more. */
  losses: number;
  /** Plants times the days each stood: 0 or more. */
  plantDays: number;
  /** What was expected before, worth so many losses in so many plant-days, both above 0. */
  prior?: { losses: number; plantDays: number };
  /** Of the interval, two-sided, above 0 and below 1; 0.95 unless given. */
  confidence?: number;
}

export interface LossRate {
  /** Deaths per plant and day; null where no plant stood a day and nothing was expected. */
  rate: number | null;
  low: number;
  /** null where no plant stood a day and nothing was expected: no rate is too high. */
  high: number | null;
}

/**
 * Deaths per plant-day. Without a prior losses / plantDays with the exact Poisson interval (F. Garwood, Biometrika 28, 1936, 437–442: the
 * gamma quantiles of losses and losses + 1); with one the mean and the equal-tailed interval of the gamma posterior, whose counts are the prior's
 * and the observed ones together. Throws InputError naming losses that are negative or no whole number, plant-days that are
 * negative or no number, a prior that is not above 0, or a confidence of 0 or 1.
 */
export function lossRate({ losses, plantDays, prior, confidence = 0.95 }: LossRateInput): LossRate {
  requireWhole('losses', losses, 0, MOST_COUNTED);
  requireNotNegative('plantDays', plantDays);
  const beside = (1 - requireConfidence(confidence)) / 2;
  if (prior !== undefined) {
    const shape = losses + requirePositive('prior.losses', prior.losses);
    const exposure = plantDays + requirePositive('prior.plantDays', prior.plantDays);
    return {
      rate: shape / exposure,
      low: gammaQuantile({ share: beside, shape }) / exposure,
      high: gammaQuantile({ share: 1 - beside, shape }) / exposure,
    };
  }
  if (plantDays === 0) return { rate: null, low: 0, high: null };
  return {
    rate: losses / plantDays,
    low: losses === 0 ? 0 : gammaQuantile({ share: beside, shape: losses }) / plantDays,
    high: gammaQuantile({ share: 1 - beside, shape: losses + 1 }) / plantDays,
  };
}
