import { bulkForPure, cellOutcomes, type CellOutcomes, pureLiveSeed, seedGrams, seedsPerCell } from '@rootclock/domain';

/** What is asked of a sowing. Shares are 0 to 1; null where it is not known. */
export interface SowingAsked {
  cells: number | null;
  targetFill: number | null;
  /** Expected emergence, which fills cells. */
  germination: number | null;
  hard: number | null;
  dormant: number | null;
  purity: number | null;
  seedsPerGram: number | null;
  gramsLeft: number | null;
}

export interface SowingReckoned {
  seedsPerCell: number;
  seeds: number;
  outcomes: CellOutcomes;
  /** Null without seeds per gram. */
  grams: number | null;
  /** The most cells that the seed left is enough for, where it is not enough for all. */
  cellsInStore: number | null;
  /** Pure live seed as a share of the weight, and the weight from the store that holds a gram of it. */
  pureLive: { share: number; bulkOfOne: number } | null;
}

const isShare = (value: number | null): value is number => value !== null && value >= 0 && value <= 1;

/** 'incomplete' while something it needs is missing or cannot be, 'never' where no number of seeds fills so many cells. */
export function reckonSowing({
  cells,
  targetFill,
  germination,
  hard,
  dormant,
  purity,
  seedsPerGram,
  gramsLeft,
}: SowingAsked): SowingReckoned | 'incomplete' | 'never' {
  if (
    cells === null ||
    !Number.isInteger(cells) ||
    cells < 1 ||
    cells > 10_000_000 ||
    !isShare(targetFill) ||
    targetFill === 0 ||
    !isShare(germination)
  )
    return 'incomplete';
  if (purity !== null && !isShare(purity)) return 'incomplete';
  const perCell = seedsPerCell({ germination, targetFill });
  if (perCell === null) return 'never';
  const seeds = perCell * cells;
  const pure = purity ?? 1;
  const weighs = seedsPerGram !== null && seedsPerGram > 0 && pure > 0;
  const grams = weighs ? seedGrams({ seeds, seedsPerGram, purity: pure }) : null;
  const share =
    purity !== null && germination + (hard ?? 0) + (dormant ?? 0) <= 1
      ? pureLiveSeed({ purity, germination, hard: hard ?? 0, dormant: dormant ?? 0 })
      : 0;
  return {
    seedsPerCell: perCell,
    seeds,
    grams,
    outcomes: cellOutcomes({ germination, seedsPerCell: perCell, cells }),
    cellsInStore:
      weighs && grams !== null && gramsLeft !== null && grams > gramsLeft
        ? Math.floor((gramsLeft * seedsPerGram * pure) / perCell)
        : null,
    pureLive:
      share > 0 && purity !== null
        ? {
            share,
            bulkOfOne: bulkForPure({ purity, germination, hard: hard ?? 0, dormant: dormant ?? 0, pureAmount: 1 }),
          }
        : null,
  };
}
