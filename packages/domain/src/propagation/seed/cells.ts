import { requireShare, requireWhole } from '../../kernel/input.ts';
import { binomialUpperTail } from '../../statistics/binomial.ts';

const MOST_CELLS = Number.MAX_SAFE_INTEGER;
/** Two cells in a hundred left empty by 90 % and two seeds are exactly a target of 99 %; rounding must not ask for a third seed. */
const ROUNDING = 1e-12;

/**
 * The fewest seeds in each cell for which at least the share `targetFill` of the cells is expected to hold a seedling:
 * the least n with 1 − (1 − germination)ⁿ ≥ targetFill. `germination` is the expected emergence, 0 to 1, never pure live seed. 0 for a target
 * of 0; null where no number of seeds is enough: nothing germinates, or a target of 1 with less than full germination.
 * Throws InputError naming a share outside 0 to 1. Source: binomial; R. K. Dumroese, T. D. Landis and T. Luna, USDA Forest
 * Service RMRS-GTR-274, 2012, print its values as a table.
 */
export function seedsPerCell({ germination, targetFill }: { germination: number; targetFill: number }): number | null {
  requireShare('germination', germination);
  requireShare('targetFill', targetFill);
  if (targetFill === 0) return 0;
  if (germination === 1) return 1;
  if (germination === 0 || targetFill === 1) return null;
  return Math.ceil((Math.log1p(-targetFill) / Math.log1p(-germination)) * (1 - ROUNDING));
}

export interface CellOutcomes {
  empty: number;
  single: number;
  /** Cells with two seedlings or more: thinned, or left together where the plant is grown in clumps. */
  multiple: number;
}

/**
 * How many of the cells (a whole number, 0 or more) are expected to stay empty, to hold one seedling and to hold several; expected
 * numbers, with fractions. `germination` is the expected emergence, 0 to 1; `seedsPerCell` a whole number, 0 or more.
 * Throws InputError naming a share outside 0 to 1 or a count that is negative or no whole number. Source: binomial.
 */
export function cellOutcomes({
  germination,
  seedsPerCell: seeds,
  cells,
}: {
  germination: number;
  seedsPerCell: number;
  cells: number;
}): CellOutcomes {
  requireShare('germination', germination);
  requireWhole('seedsPerCell', seeds, 0, MOST_CELLS);
  requireWhole('cells', cells, 0, MOST_CELLS);
  const single = seeds === 0 ? 0 : seeds * germination * (1 - germination) ** (seeds - 1);
  return {
    empty: cells * (1 - germination) ** seeds,
    single: cells * single,
    multiple: cells * binomialUpperTail({ atLeast: 2, tried: seeds, share: germination }),
  };
}

export interface CellsAndTrays {
  cells: number;
  trays: number;
  /** Cells of the last tray that stay free. */
  spareCells: number;
}

/**
 * The whole trays that hold the cells (a whole number, 0 or more), and what stays free in the last one. `cellsPerTray` is a whole number, 1 or more.
 * Throws InputError naming the one that is not.
 */
export function cellsAndTrays({ cells, cellsPerTray }: { cells: number; cellsPerTray: number }): CellsAndTrays {
  requireWhole('cells', cells, 0, MOST_CELLS);
  requireWhole('cellsPerTray', cellsPerTray, 1, MOST_CELLS);
  const spareCells = (cellsPerTray - (cells % cellsPerTray)) % cellsPerTray;
  // From the cells that would fill the trays, since a quotient of large numbers can round up to a tray too many.
  return { cells, trays: Math.round((cells + spareCells) / cellsPerTray), spareCells };
}
