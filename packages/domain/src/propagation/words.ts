import { type CalendarDate } from '../kernel/dates.ts';
import { requireUnits } from '../kernel/input.ts';
import type { ContainerKind } from '../stock/ledger-words.ts';

/** How a batch is propagated. */
export const PROPAGATION_METHODS = ['seed', 'cutting', 'root-cutting', 'division'] as const;
export type PropagationMethod = (typeof PROPAGATION_METHODS)[number];

/** What a batch is counted in from its start to its end: cells of trays, whole trays, pieces (cuttings, divisions), or packs (seed in a moist medium). */
export const BATCH_UNITS = ['cell', 'tray', 'piece', 'pack'] as const;
export type BatchUnit = (typeof BATCH_UNITS)[number];

/** The facts of a batch that never change after its start, as far as decisions need them. */
export interface BatchKind {
  method: PropagationMethod;
  unit: BatchUnit;
  /** Null where the batch has no container: loose pieces, packs. */
  containerKind: ContainerKind | null;
  startedOn: CalendarDate;
}

/** Whether one unit is one plant (or one cell with plants), so that plants and units can be set against each other. */
export const isUnitOnePlant = (unit: BatchUnit): boolean => unit === 'cell' || unit === 'piece';

const CONTAINERS_FOR: Record<BatchUnit, readonly (ContainerKind | null)[]> = {
  cell: ['tray', 'pot'],
  tray: ['tray', 'flat'],
  piece: ['tray', 'pot', 'flat', null],
  pack: ['flat', null],
};

/** The containers a batch in this unit may stand in; null stands for none. Pots count as single cells. */
export const containersForUnit = (unit: BatchUnit): readonly (ContainerKind | null)[] => CONTAINERS_FOR[unit];

/** The units a method is counted in, the usual one first: a cutting is never a pack of seed. */
export const UNITS_FOR_METHOD: Record<PropagationMethod, readonly BatchUnit[]> = {
  seed: ['cell', 'tray', 'pack'],
  cutting: ['cell', 'piece', 'tray'],
  'root-cutting': ['cell', 'piece', 'tray'],
  division: ['piece', 'cell'],
};

/** Cells of a number of whole trays. Both are whole numbers above zero. Throws InputError naming the argument otherwise. */
export function cellsOfTrays(trays: number, cellsPerTray: number): number {
  return requireUnits('units', requireUnits('trays', trays) * requireUnits('cellsPerTray', cellsPerTray));
}
