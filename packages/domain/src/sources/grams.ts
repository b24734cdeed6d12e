import { requirePositive } from '../kernel/input.ts';

/** Grams to the milligram, which is as fine as stores are kept, so that sums of what was weighed stay exact. Any finite number. */
export const toMilligram = (grams: number): number => Math.round(grams * 1000) / 1000;

/** Grams above 0 as a store can book them: to the milligram, and at least one, because a few fine seeds weigh less. Throws InputError otherwise. */
export const bookableGrams = (grams: number): number => Math.max(0.001, toMilligram(requirePositive('grams', grams)));
