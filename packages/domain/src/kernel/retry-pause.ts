import { InputError } from './input.ts';

export interface RetryPause {
  /** How often it failed in a row; 1 after the first failure. */
  failures: number;
  firstMs: number;
  longestMs: number;
  /** A number from 0 up to 1, drawn anew for each pause. */
  chance: number;
}

/**
 * How long to wait before trying again, in milliseconds: doubled with each failure up to the longest, and of that between half and the whole by
 * chance, so that those who were cut off together do not come back together. Throws InputError for fewer than one failure or a chance outside 0–1.
 */
export function retryPauseMs({ failures, firstMs, longestMs, chance }: RetryPause): number {
  if (!(failures >= 1)) throw new InputError('failures', 'must be at least 1');
  if (!(chance >= 0 && chance <= 1)) throw new InputError('chance', 'must lie within 0 and 1');
  const whole = Math.min(longestMs, firstMs * 2 ** (failures - 1));
  return Math.round(whole * (0.5 + chance / 2));
}
