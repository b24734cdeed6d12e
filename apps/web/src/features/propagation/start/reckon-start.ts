import {
  type BatchUnit,
  cellsAndTrays,
  isUnitOnePlant,
  mediaVolume,
  productOfShares,
  unitsToStart,
} from '@rootclock/domain';

/** The share by which growing medium packs down when it is watered in: assumed, as nobody publishes one for all media. */
export const MEDIUM_SETTLES = 0.15;

export interface StartAsked {
  wanted: number | null;
  /** How sure to be, 0 to 1. */
  confidence: number | null;
  unit: BatchUnit;
  /** What is believed of the stages ahead. */
  ahead: readonly { alpha: number; beta: number }[];
  seedsPerCell: number | null;
  cellsPerTray: number | null;
  cellMl: number | null;
  potMl: number | null;
}

export interface StartReckoned {
  /** Cells or pieces to start; of trays and packs the seeds. */
  units: number;
  counts: 'units' | 'seeds';
  /** Whole trays they fill; null where nothing is said of cells. */
  trays: number | null;
  /** Units of those whole trays. */
  inTrays: number | null;
  seeds: number | null;
  /** Litres for the cells, and for the pots that the plants wanted go into. */
  cellLitres: number | null;
  potLitres: number | null;
}

const MOST_WANTED = 1_000_000;

/** 'incomplete' while a figure is missing or cannot be, 'never' where no number gives so many plants so surely. */
export function reckonStart({
  wanted,
  confidence,
  unit,
  ahead,
  seedsPerCell,
  cellsPerTray,
  cellMl,
  potMl,
}: StartAsked): StartReckoned | 'incomplete' | 'never' {
  if (
    wanted === null ||
    !Number.isInteger(wanted) ||
    wanted < 1 ||
    wanted > MOST_WANTED ||
    confidence === null ||
    !(confidence > 0 && confidence < 1)
  )
    return 'incomplete';
  const fewest = ahead.length === 0 ? wanted : unitsToStart({ wanted, success: productOfShares(ahead), confidence });
  if (fewest === null) return 'never';
  const counts = isUnitOnePlant(unit) ? 'units' : 'seeds';
  const filled =
    counts === 'units' && unit === 'cell' && cellsPerTray !== null && cellsPerTray > 0
      ? cellsAndTrays({ cells: fewest, cellsPerTray })
      : null;
  const inTrays = filled ? filled.cells + filled.spareCells : null;
  return {
    units: fewest,
    counts,
    trays: filled?.trays ?? null,
    inTrays,
    seeds: counts === 'seeds' ? fewest : seedsPerCell === null ? null : (inTrays ?? fewest) * seedsPerCell,
    cellLitres:
      counts === 'units' && cellMl !== null && cellMl > 0
        ? mediaVolume({ units: inTrays ?? fewest, containerMl: cellMl, settle: MEDIUM_SETTLES })
        : null,
    potLitres:
      potMl !== null && potMl > 0 ? mediaVolume({ units: wanted, containerMl: potMl, settle: MEDIUM_SETTLES }) : null,
  };
}
