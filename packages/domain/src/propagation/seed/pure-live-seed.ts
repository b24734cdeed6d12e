import { InputError, requireNotNegative, requirePositive, requireShare } from '../../kernel/input.ts';

/** Of the pure seed, all shares 0 to 1: what germinated, and what did not but was found hard or dormant and alive. */
export interface SeedQuality {
  /** Share of the weight that is seed of the kind itself. */
  purity: number;
  germination: number;
  hard?: number;
  dormant?: number;
}

/** Three percentages that a laboratory rounded may pass a hundred by a hair. */
const ROUNDING = 1e-9;

/**
 * Pure live seed as a share of the bulk weight, 0 to 1: purity × (germination + hard + dormant), since hard and dormant native seed is alive
 * and comes up after a winter. It says what a weight of seed is worth; what fills cells is the expected emergence, never this.
 * Throws InputError naming a share outside 0 to 1, and `germination` where the three together pass 1.
 * Source: the reckoning of the seed trade, as in the seed worksheets of the Texas Department of Transportation; hard and dormant seed by 7 CFR 201.21.
 */
export function pureLiveSeed({ purity, germination, hard = 0, dormant = 0 }: SeedQuality): number {
  requireShare('purity', purity);
  const alive =
    requireShare('germination', germination) + requireShare('hard', hard) + requireShare('dormant', dormant);
  if (alive > 1 + ROUNDING)
    throw new InputError('germination', 'must be at most 1 together with hard and dormant seed', { alive });
  return purity * Math.min(1, alive);
}

/**
 * The amount of bulk seed that holds `pureAmount` (0 or more, in any unit) of pure live seed, in the same unit. Throws InputError as pureLiveSeed does,
 * and where purity is 0 or nothing is alive: no amount of such seed is enough. Source: as for pureLiveSeed.
 */
export function bulkForPure({ pureAmount, ...quality }: SeedQuality & { pureAmount: number }): number {
  requireNotNegative('pureAmount', pureAmount);
  const share = pureLiveSeed(quality);
  requirePositive('purity', quality.purity);
  if (share === 0) requirePositive('germination', quality.germination);
  return pureAmount / share;
}
