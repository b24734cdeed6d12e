import { InputError, requireWhole } from '../../kernel/input.ts';

/**
 * The printed table: from this mean on (per cent, rounded, 51 to 99) the largest range between four replicates, and between two. No figure
 * for two is printed at 98 and 99. Means of 2 to 50 are printed beside those of 99 to 51.
 */
const PRINTED = [
  [99, 5, null],
  [98, 6, null],
  [97, 7, 6],
  [96, 8, 6],
  [95, 9, 7],
  [93, 10, 8],
  [91, 11, 9],
  [90, 12, 9],
  [89, 12, 10],
  [88, 13, 10],
  [87, 13, 11],
  [84, 14, 11],
  [81, 15, 12],
  [78, 16, 13],
  [76, 17, 13],
  [73, 17, 14],
  [69, 18, 14],
  [67, 18, 15],
  [56, 19, 15],
  [55, 20, 15],
  [51, 20, 16],
] as const;

/** A replicate has 100 seeds, so that its count is its percentage. */
const SEEDS_OF_A_REPLICATE = 100;

/**
 * The largest range allowed between replicates of 100 seeds, in percentage points, by their mean (per cent, 0 to 100, rounded to a whole one
 * as the regulation does): for four replicates, and for two. null where the table prints none: means that round to 0, 1 or 100, and for two
 * replicates 2, 3, 98 and 99 as well. Throws InputError naming a mean outside 0 to 100, or `replicates` that are neither 4 nor 2.
 * Source: 7 CFR 201.55(a), the table as printed (edition of 2015).
 */
export function replicateTolerance({
  meanPercent,
  replicates,
}: {
  meanPercent: number;
  replicates: number;
}): number | null {
  if (replicates !== 4 && replicates !== 2)
    throw new InputError('replicates', 'must be 4 or 2: the table prints ranges for no other number', {
      choices: [4, 2],
    });
  if (typeof meanPercent !== 'number' || !(meanPercent >= 0 && meanPercent <= 100))
    throw new InputError('meanPercent', 'must be a percentage from 0 to 100');
  const mean = Math.round(meanPercent);
  // The printed pairs of means add up to 101: 99 stands beside 2, 51 beside 50.
  const upper = mean >= 51 ? mean : 101 - mean;
  const row = upper > 99 ? undefined : PRINTED.find(([from]) => upper >= from);
  return row === undefined ? null : replicates === 4 ? row[1] : row[2];
}

export interface Viability {
  /** Of all replicates, 0 to 100, not rounded. */
  meanPercent: number;
  /** Highest less lowest, in percentage points. */
  rangePercent: number;
  /** null where no table covers the number of replicates or their mean. */
  tolerancePercent: number | null;
  /** Whether the replicates disagree, so that the test is to be done again; null where no table covers the number of replicates. */
  repeat: boolean | null;
}

/**
 * What a viability test says, from the germinated seeds of each replicate of 100 (whole numbers, 0 to 100). Without a printed figure for the mean of two
 * or four replicates they agree: that near to 0 or 100 their range cannot pass the figure printed for the next mean.
 * Throws InputError naming `replicates` where there is none, or one is no whole number from 0 to 100. Source: 7 CFR 201.55(a).
 */
export function viabilityOf(replicates: readonly number[]): Viability {
  if (replicates.length === 0) throw new InputError('replicates', 'must hold at least one replicate');
  const germinated = replicates.map((seeds) => requireWhole('replicates', seeds, 0, SEEDS_OF_A_REPLICATE));
  const meanPercent = germinated.reduce((sum, seeds) => sum + seeds, 0) / germinated.length;
  const rangePercent = Math.max(...germinated) - Math.min(...germinated);
  const tabulated = germinated.length === 4 || germinated.length === 2;
  const tolerancePercent = tabulated ? replicateTolerance({ meanPercent, replicates: germinated.length }) : null;
  return {
    meanPercent,
    rangePercent,
    tolerancePercent,
    repeat: tabulated ? tolerancePercent !== null && rangePercent > tolerancePercent : null,
  };
}
