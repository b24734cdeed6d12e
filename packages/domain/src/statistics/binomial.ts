import { InputError, requireShare, requireWhole } from '../kernel/input.ts';
import { betaTails } from './incomplete-beta.ts';

/** Counts as large as numbers are exact. */
export const MOST_COUNTED = Number.MAX_SAFE_INTEGER;

/** The share of cases with fewer than `atLeast` (1 to tried) successes in `tried`, to the digits of its own size. Not checked. */
export function binomialShortfall(atLeast: number, tried: number, share: number): number {
  return betaTails(atLeast, tried - atLeast + 1, share, 1 - share).upper;
}

/**
 * The probability of at least `atLeast` successes in `tried` independent tries that each succeed with the probability `share` (0 to 1):
 * 1 for atLeast 0, 0 where more are asked for than tried. Exact to about 1e-13 of its value where it is below a half, in far tails too.
 * Throws InputError naming a count that is negative or no whole number, or a share outside 0 to 1.
 * Source: NIST Digital Library of Mathematical Functions, 8.17.5.
 */
export function binomialUpperTail({
  atLeast,
  tried,
  share,
}: {
  atLeast: number;
  tried: number;
  share: number;
}): number {
  requireWhole('atLeast', atLeast, 0, MOST_COUNTED);
  requireWhole('tried', tried, 0, MOST_COUNTED);
  requireShare('share', share);
  if (atLeast === 0) return 1;
  if (atLeast > tried) return 0;
  return betaTails(atLeast, tried - atLeast + 1, share, 1 - share).lower;
}

/** Throws InputError naming `passed` where more passed than were tried, and for counts that are negative or no whole numbers. */
export function requirePassed(passed: number, tried: number): void {
  requireWhole('passed', passed, 0, MOST_COUNTED);
  requireWhole('tried', tried, 0, MOST_COUNTED);
  if (passed > tried)
    throw new InputError('passed', `must be ${tried} or fewer: that many were tried`, { most: tried });
}
