import { InputError, requirePositive, requireShare, requireWhole } from '../../kernel/input.ts';

const MOST_COUNTED = Number.MAX_SAFE_INTEGER;

/**
 * Grams to take from the store for so many seeds (a whole number, 0 or more): seeds / (seedsPerGram × purity), since the store holds chaff as well.
 * `seedsPerGram` counts pure seed, above 0; `purity` is the share of the weight that is seed, above 0, at most 1.
 * Throws InputError naming the one that is not.
 */
export function seedGrams({
  seeds,
  seedsPerGram,
  purity,
}: {
  seeds: number;
  seedsPerGram: number;
  purity: number;
}): number {
  requireWhole('seeds', seeds, 0, MOST_COUNTED);
  requirePositive('seedsPerGram', seedsPerGram);
  requirePositive('purity', requireShare('purity', purity));
  return seeds / (seedsPerGram * purity);
}

/**
 * Litres of loose growing medium that fill so many containers (a whole number, 0 or more) of `containerMl` millilitres (above 0), where the medium packs down
 * by the share `settle` (0 to below 1): units × containerMl / 1000 / (1 − settle). Throws InputError naming the one out of range.
 */
export function mediaVolume({
  units,
  containerMl,
  settle,
}: {
  units: number;
  containerMl: number;
  settle: number;
}): number {
  requireWhole('units', units, 0, MOST_COUNTED);
  requirePositive('containerMl', containerMl);
  requireShare('settle', settle);
  if (settle === 1) throw new InputError('settle', 'must be below 1: a medium does not pack down to nothing');
  return (units * containerMl) / 1000 / (1 - settle);
}
