import { MAX_UNITS, requireShare, requireWhole } from '../../kernel/input.ts';
import { betaBinomialUpperTail, type Shapes } from '../../statistics/beta-binomial.ts';
import { productOfShares } from '../learning/product-of-shares.ts';

/** Plants that come of what is tried: held at a confidence, and in the mean. Whole plants. */
export interface ExpectedYield {
  cautiousUnits: number;
  usualUnits: number;
}

/**
 * How many of `tried` units get through all the stages ahead, whose shares are each known as a beta distribution: `cautiousUnits` is the most k with
 * P(k or more get through) ≥ confidence, exact by the beta-binomial distribution of the product of the shares; `usualUnits` is the mean, rounded, and
 * never less than the cautious number. With no stage ahead all get through. Throws InputError for a number that is negative or no whole one, shapes not
 * above 0, and a confidence outside 0 to 1.
 */
export function expectedYield({
  tried,
  ahead,
  confidence,
}: {
  tried: number;
  ahead: readonly Shapes[];
  confidence: number;
}): ExpectedYield {
  requireWhole('tried', tried, 0, MAX_UNITS);
  requireShare('confidence', confidence);
  if (ahead.length === 0) return { cautiousUnits: tried, usualUnits: tried };
  const { alpha, beta } = productOfShares(ahead);
  let low = 0;
  let high = tried;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (betaBinomialUpperTail({ atLeast: middle, tried, alpha, beta }) >= confidence) low = middle;
    else high = middle - 1;
  }
  return { cautiousUnits: low, usualUnits: Math.max(low, Math.round((tried * alpha) / (alpha + beta))) };
}
