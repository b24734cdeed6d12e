/**
 * Plants in plug trays are promised in whole trays: what fills no tray is promised to nobody. `cells` are the cells of the container that plants
 * stand in, a whole number of 1 or more, or null where it has none; each plant then goes by itself.
 */
export type Cells = number | null;

/** How many whole trays so many plants (a whole number, 0 or more) fill. Without cells, the plants themselves. */
export const traysIn = (plants: number, cells: Cells): number => Math.floor(plants / (cells ?? 1));

/** The plants of so many whole trays. */
export const plantsIn = (trays: number, cells: Cells): number => trays * (cells ?? 1);

/** The plants among so many that fill whole trays. */
export const inWholeTrays = (plants: number, cells: Cells): number => plantsIn(traysIn(plants, cells), cells);

export interface TrayNeighbours {
  cells: number;
  /** The next whole trays below, in plants; null where that would be none. */
  below: number | null;
  above: number;
}

/** Null where so many plants (1 or more) fill whole trays; else the numbers of plants next to it that do. */
export function besidesWholeTrays(plants: number, cells: Cells): TrayNeighbours | null {
  if (cells === null || plants % cells === 0) return null;
  const below = inWholeTrays(plants, cells);
  return { cells, below: below === 0 ? null : below, above: below + cells };
}
