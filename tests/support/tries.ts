// How often a property is tried and from which seed: a small round in the suite, the campaign's own where one is asked for.
import type { Parameters } from 'fast-check';

export function wholeNumber(name: string): number | undefined {
  const text = process.env[name];
  if (text === undefined || text === '') return undefined;
  const number = Number(text);
  if (!Number.isInteger(number)) throw new Error(`${name} must be a whole number, not ${text}`);
  return number;
}

/** A round of so many tries, from this seed or the suite's. A campaign (`npm run campaign`) says both itself. */
export function tries(few: number, seed?: number): Pick<Parameters, 'seed'> & { numRuns: number } {
  const wanted = wholeNumber('ROOTCLOCK_SEED') ?? seed;
  return { numRuns: wholeNumber('ROOTCLOCK_RUNS') ?? few, ...(wanted === undefined ? {} : { seed: wanted }) };
}

export const isCampaign = (name: string): boolean => process.env.ROOTCLOCK_CAMPAIGN === name;
