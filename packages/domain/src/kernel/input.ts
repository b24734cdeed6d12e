/**
 * Thrown by every pure function when what it was given cannot be true: a day that does not exist, a share above one,
 * negative units. `argument` names what was wrong in the caller's own words, so that a form can put the sentence
 * beside the right field; `data` carries the numbers a sentence may need.
 */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly argument: string;
  readonly data: Readonly<Record<string, unknown>> | undefined;

  constructor(argument: string, problem: string, data?: Readonly<Record<string, unknown>>) {
    super(`${argument}: ${problem}`);
    this.argument = argument;
    this.data = data;
  }
}

/** Returns the text when it holds more than blanks. Throws InputError naming the argument otherwise. */
export function requireText(argument: string, value: unknown): string {
  if (typeof value !== 'string' || value.trim() === '')
    throw new InputError(argument, 'must be a text that is not empty');
  return value;
}

/** Returns the value when it is one of the choices. Throws InputError naming the argument and the choices otherwise. */
export function requireOneOf<T extends string>(argument: string, value: unknown, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === value);
  if (found === undefined)
    throw new InputError(argument, `must be one of ${choices.join(', ')}`, { choices: [...choices] });
  return found;
}

/** The most units one entry may carry. It keeps every sum of a nursery far below the largest exact integer. */
export const MAX_UNITS = 10_000_000;

/** Returns a whole number from `least` to `most`. Throws InputError naming the argument otherwise (NaN, fraction, outside). */
export function requireWhole(argument: string, value: unknown, least: number, most: number): number {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least || value > most) {
    throw new InputError(argument, `must be a whole number from ${least} to ${most}`, { least, most });
  }
  return value;
}

/** Returns positive whole units, 1 to MAX_UNITS. Throws InputError naming the argument otherwise. */
export function requireUnits(argument: string, value: unknown): number {
  return requireWhole(argument, value, 1, MAX_UNITS);
}

/** Returns a share from 0 to 1, both included. Throws InputError naming the argument otherwise (NaN, percent). */
export function requireShare(argument: string, value: unknown): number {
  if (typeof value !== 'number' || !(value >= 0 && value <= 1)) {
    throw new InputError(argument, 'must be a share from 0 to 1');
  }
  return value;
}

/** Returns a finite number above zero (a length, an area, a ratio). Throws InputError naming the argument otherwise. */
export function requirePositive(argument: string, value: unknown): number {
  if (typeof value !== 'number' || !Number.isFinite(value) || value <= 0) {
    throw new InputError(argument, 'must be a number above 0');
  }
  return value;
}

/** Returns a finite number from 0 (an amount, a length of time). Throws InputError naming the argument otherwise. */
export function requireNotNegative(argument: string, value: unknown): number {
  if (typeof value !== 'number' || !Number.isFinite(value) || value < 0) {
    throw new InputError(argument, 'must be a number, 0 or more');
  }
  return value;
}

/** Returns a finite number of either sign (a temperature). Throws InputError naming the argument otherwise. */
export function requireNumber(argument: string, value: unknown): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new InputError(argument, 'must be a number');
  return value;
}
