import { InputError, requirePositive, requireShare, requireWhole } from '../../kernel/input.ts';
import { passShare, type SharePrior } from '../../statistics/pass-share.ts';

/** What a nursery saw of one stage: how many were tried, how many of them passed, and in how many batches. */
export interface ShareEvidence {
  tried: number;
  passed: number;
  batches: number;
}

export interface LearnedShare extends ShareEvidence {
  /** The shapes of the posterior beta distribution; both above 0. */
  alpha: number;
  beta: number;
  /** The posterior mean. */
  share: number;
  /** Ends of the Wilson interval of what was counted, none of it scaled down and without the prior; 0 and 1 where nothing was tried. */
  low: number;
  high: number;
  priorShare: number;
  priorWeight: number;
}

export interface LearningSettings {
  /** The most tries that counts may weigh as, 1 or more: batches differ more than their counts alone would say. */
  evidenceLimit: number;
  /** Of the interval, two-sided, above 0 and below 1. */
  confidence: number;
}

/** The confidence of the intervals that screens show. */
export const LEARNING_CONFIDENCE = 0.95;

/** The least a shape may be: a share that is sure in either direction keeps a hair of doubt, so that it still has a distribution to reckon with. */
const HAIR = 1e-9;
const MOST_TRIED = 2 ** 40;

/** No evidence at all. */
export const NOTHING_TRIED: ShareEvidence = { tried: 0, passed: 0, batches: 0 };

/**
 * What a nursery's own counts make of a share that a protocol gives. The protocol's figure counts as `weight` tries of which that share passed;
 * the counts are added as they are up to `evidenceLimit` tries, and scaled down to it beyond, keeping their share. With no counts the figure
 * alone remains. Throws InputError naming counts that are negative, no whole numbers or more passed than tried, a prior share outside 0 to 1,
 * a weight or limit that is not above 0, and a confidence of 0 or 1.
 */
export function learnShare(prior: SharePrior, evidence: ShareEvidence, settings: LearningSettings): LearnedShare {
  requireShare('prior.share', prior.share);
  requirePositive('prior.weight', prior.weight);
  requirePositive('evidenceLimit', settings.evidenceLimit);
  requireWhole('tried', evidence.tried, 0, MOST_TRIED);
  requireWhole('batches', evidence.batches, 0, MOST_TRIED);
  if (requireWhole('passed', evidence.passed, 0, MOST_TRIED) > evidence.tried)
    throw new InputError('passed', 'must not be more than were tried', { tried: evidence.tried });
  const { low, high } = passShare({ passed: evidence.passed, tried: evidence.tried, confidence: settings.confidence });
  const scale = evidence.tried > settings.evidenceLimit ? settings.evidenceLimit / evidence.tried : 1;
  const alpha = Math.max(HAIR, prior.share * prior.weight + evidence.passed * scale);
  const beta = Math.max(HAIR, (1 - prior.share) * prior.weight + (evidence.tried - evidence.passed) * scale);
  return {
    ...evidence,
    alpha,
    beta,
    share: alpha / (alpha + beta),
    low,
    high,
    priorShare: prior.share,
    priorWeight: prior.weight,
  };
}
