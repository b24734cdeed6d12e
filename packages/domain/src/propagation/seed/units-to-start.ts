import { MAX_UNITS, requireShare, requireWhole } from '../../kernel/input.ts';
import { betaBinomialShortfall, requireShapes, type Shapes } from '../../statistics/beta-binomial.ts';
import { binomialShortfall, MOST_COUNTED } from '../../statistics/binomial.ts';

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

// How likely it is that fewer than wanted come of the units, or null where no number of units brings that down to nothing.
function shortfallOf(wanted: number, success: number | Shapes): ((units: number) => number) | null {
  if (typeof success === 'number') {
    const share = requireShare('success', success);
    return share === 0 ? null : (units) => binomialShortfall(wanted, units, share);
  }
  const shapes = requireShapes(success);
  return (units) => betaBinomialShortfall(wanted, units, shapes);
}

/**
 * The fewest units to start so that at least `wanted` of them succeed with at least the confidence: the least n with
 * P(Binomial(n, success) ≥ wanted) ≥ confidence, or the same for the beta-binomial. Exact, not by approximation.
 * null where it cannot be met: nothing ever succeeds, certainty is asked of an uncertain share, or more units than numbers can count would be needed
 * (a learned share that may lie next to 0). 0 where nothing is wanted, or no confidence is asked.
 * Throws InputError naming `wanted`, `success` (or `alpha`, `beta`) or `confidence` out of range.
 * The probability of falling short only shrinks with n, so the answer is found by halving.
 */
export function unitsToStart({ wanted, success, confidence }: UnitsToStartInput): number | null {
  requireWhole('wanted', wanted, 0, MAX_UNITS);
  requireShare('confidence', confidence);
  const shortfall = shortfallOf(wanted, success);
  if (wanted === 0 || confidence === 0) return 0;
  if (success === 1) return wanted;
  if (shortfall === null || confidence === 1) return null;
  const allowed = (1 - confidence) * (1 + ROUNDING);
  const enough = (units: number) => shortfall(units) <= allowed;
  if (enough(wanted)) return wanted;
  let tooFew = wanted;
  let most = wanted;
  do {
    if (most === MOST_COUNTED) return null;
    tooFew = most;
    most = Math.min(MOST_COUNTED, most * 2);
  } while (!enough(most));
  while (most - tooFew > 1) {
    const middle = tooFew + Math.floor((most - tooFew) / 2);
    if (enough(middle)) most = middle;
    else tooFew = middle;
  }
  return most;
}
