import type { CalendarDate } from '../kernel/dates.ts';
import { earliestOf } from '../kernel/dates.ts';
import { InputError, requirePositive } from '../kernel/input.ts';

/** What is known of a part's seed. Shares are 0 to 1. */
export interface BlendPart {
  grams: number;
  purity: number | null;
  seedsPerGram: number | null;
  gatheredOn: CalendarDate | null;
  sowFresh: boolean;
  neverDry: boolean;
}

export interface BlendedSeed {
  grams: number;
  /** Of the blend's weight, in the order of the parts; they sum to 1. */
  shares: number[];
  purity: number | null;
  seedsPerGram: number | null;
  /** The earliest of the parts: a blend is as old as its oldest seed. */
  gatheredOn: CalendarDate | null;
  sowFresh: boolean;
  neverDry: boolean;
}

/**
 * What parts make together, by weight. Purity is the parts' mean by weight, seeds per gram the mean by weight of pure seed; either is null
 * where one part's is not known, since a mean over the rest would claim more than anyone knows. Throws InputError without parts, and for
 * grams that are not above 0.
 */
export function blendSeed(parts: readonly BlendPart[]): BlendedSeed {
  if (parts.length === 0) throw new InputError('parts', 'must hold at least one');
  const grams = parts.reduce((sum, part) => sum + requirePositive('grams', part.grams), 0);
  const mean = (of: (part: BlendPart) => number | null, weight: (part: BlendPart) => number): number | null => {
    const known = parts.flatMap((part) => (of(part) === null ? [] : [{ value: of(part) ?? 0, weight: weight(part) }]));
    const weights = known.reduce((sum, each) => sum + each.weight, 0);
    if (known.length < parts.length || weights === 0) return null;
    return known.reduce((sum, each) => sum + each.value * each.weight, 0) / weights;
  };
  const purity = mean(
    (part) => part.purity,
    (part) => part.grams,
  );
  const gathered = parts.flatMap(({ gatheredOn }) => (gatheredOn === null ? [] : [gatheredOn]));
  return {
    grams,
    purity,
    shares: parts.map((part) => part.grams / grams),
    seedsPerGram: mean(
      (part) => part.seedsPerGram,
      (part) => part.grams * (purity === null ? 1 : (part.purity ?? 1)),
    ),
    gatheredOn: gathered.length === 0 ? null : earliestOf(...gathered),
    sowFresh: parts.some((part) => part.sowFresh),
    neverDry: parts.some((part) => part.neverDry),
  };
}

/** The one value that all agree on, or null where they differ. */
export function agreedOn<Value extends string>(values: readonly (Value | null)[]): Value | null {
  const [first = null] = values;
  return values.every((value) => value === first) ? first : null;
}
