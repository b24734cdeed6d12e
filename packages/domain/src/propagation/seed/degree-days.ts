import { InputError, requireNumber } from '../../kernel/input.ts';

export interface DegreeDaysInput {
  /** The day's highest and lowest temperature in degrees Celsius. */
  maxC: number;
  minC: number;
  /** Below it nothing grows. */
  baseC: number;
  /** Above it nothing grows faster; no limit unless given. */
  upperC?: number;
}

/**
 * Growing degree days of one day, in Celsius degrees, 0 or more: the mean of highest and lowest temperature less the base, where both are first brought between base and
 * upper limit, so that a cold night takes nothing away and a hot noon adds nothing. (All in Fahrenheit, it answers in Fahrenheit degrees.)
 * Throws InputError naming what is no number, `minC` above `maxC`, or `upperC` that is not above the base.
 * Source: Iowa State University, Agronomy 541, lesson 2b (the "86/50" method).
 */
export function degreeDays({ maxC, minC, baseC, upperC }: DegreeDaysInput): number {
  requireNumber('maxC', maxC);
  requireNumber('minC', minC);
  requireNumber('baseC', baseC);
  if (upperC !== undefined && requireNumber('upperC', upperC) <= baseC)
    throw new InputError('upperC', 'must be above the base temperature');
  if (minC > maxC) throw new InputError('minC', 'must not be above the highest temperature of the day');
  const counted = (temperature: number) => Math.max(baseC, Math.min(upperC ?? temperature, temperature));
  return (counted(maxC) + counted(minC)) / 2 - baseC;
}
