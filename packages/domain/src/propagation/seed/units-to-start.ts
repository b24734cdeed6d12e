import { MAX_UNITS, requireShare, requireWhole } from '../../kernel/input.ts';
import { betaBinomialShortfall, requireShapes, type Shapes } from '../../statistics/beta-binomial.ts';
import { binomialShortfall, MOST_COUNTED } from '../../statistics/binomial.ts';
import { betaQuantile } from '../../statistics/quantiles.ts';

export interface UnitsToStartInput {
  /** Plants wanted in the end: a whole number, 0 to MAX_UNITS. */
  wanted: number;
  /** The share that succeeds, 0 to 1, where it is known; the shapes of a beta distribution where it was learned. */
  success: number | Shapes;
  /** How sure to be, 0 to 1. */
  confidence: number;
}

/** 0.9 asked for and 0.9 reached are the same, although their complements differ in the last bit. */
const ROUNDING = 1e-10;

interface Search {
  /** How likely it is that fewer than wanted come of so many units. */
  shortfall: (units: number) => number;
  /** Where to look first: the units at the share that is exceeded with the confidence. */
  guess: number;
}

// null where no number of units is enough.
function searchFor({ wanted, success, confidence }: UnitsToStartInput): Search | null {
  if (typeof success === 'number') {
    const share = requireShare('success', success);
    return share === 0
      ? null
      : { shortfall: (units) => binomialShortfall(wanted, units, share), guess: wanted / share };
  }
  const shapes = requireShapes(success);
  return {
    shortfall: (units) => betaBinomialShortfall(wanted, units, shapes),
    guess: wanted / betaQuantile({ share: 1 - confidence, ...shapes }),
  };
}

/**
 * The fewest units to start so that at least `wanted` of them succeed with at least the confidence: the least n with
 * P(Binomial(n, success) ≥ wanted) ≥ confidence, or the same for the beta-binomial. Exact, not by approximation.
 * null where it cannot be met: nothing ever succeeds, certainty is asked of an uncertain share, or more units than numbers can count would be needed
 * (a learned share that may lie next to 0). 0 where nothing is wanted, or no confidence is asked.
 * Throws InputError naming `wanted`, `success` (or `alpha`, `beta`) or `confidence` out of range.
 * The probability of falling short only shrinks with n, so the answer is closed in on from both sides.
 */
export function unitsToStart(input: UnitsToStartInput): number | null {
  const { wanted, success, confidence } = input;
  requireWhole('wanted', wanted, 0, MAX_UNITS);
  requireShare('confidence', confidence);
  const search = searchFor(input);
  if (wanted === 0 || confidence === 0) return 0;
  if (success === 1) return wanted;
  if (search === null || confidence === 1) return null;
  const allowed = (1 - confidence) * (1 + ROUNDING);
  return leastWhere((units) => search.shortfall(units) - allowed, wanted, search.guess);
}

// The least whole number from `from` at which a shrinking function is no longer above 0; null where no number reaches it.
function leastWhere(excess: (units: number) => number, from: number, guess: number): number | null {
  let low = from;
  let lowExcess = excess(low);
  if (lowExcess <= 0) return low;
  let stride = Math.max(1, Math.ceil(from / 100));
  let high = Math.min(MOST_COUNTED, Math.max(low + 1, Math.ceil(guess)));
  let highExcess = excess(high);
  while (highExcess > 0) {
    if (high === MOST_COUNTED) return null;
    low = high;
    lowExcess = highExcess;
    high = Math.min(MOST_COUNTED, high + stride);
    highExcess = excess(high);
    stride *= 2;
  }
  // Along the straight line between the ends, which is fast, and at every third step in the middle, which is sure. An end that stays counts
  // half the next time (the Illinois rule), so that both close in.
  let stayed: 'low' | 'high' | null = null;
  for (let step = 1; high - low > 1; step += 1) {
    const share = step % 3 === 0 ? 0.5 : lowExcess / (lowExcess - highExcess);
    const middle = Math.min(high - 1, Math.max(low + 1, low + Math.round(share * (high - low))));
    const middleExcess = excess(middle);
    if (middleExcess > 0) {
      low = middle;
      lowExcess = middleExcess;
      if (stayed === 'high') highExcess /= 2;
      stayed = 'high';
    } else {
      high = middle;
      highExcess = middleExcess;
      if (stayed === 'low') lowExcess /= 2;
      stayed = 'low';
    }
  }
  return high;
}
