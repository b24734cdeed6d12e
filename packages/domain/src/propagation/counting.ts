import { requireWhole, MAX_UNITS } from '../kernel/input.ts';
import { type BatchUnit, isUnitOnePlant } from './words.ts';

/** What left a batch after its last count, in the batch's own units and in plants. */
export interface LeftSinceCount {
  /** Units taken out by potting (cells emptied, trays used up). */
  pottedUnits: number;
  /** Plants that went into pots. */
  pottedPlants: number;
  /** Units written off that never came up: they take no plants with them. */
  failedUnits: number;
  /** Units written off with plants in them. */
  lostUnits: number;
}

export interface CountAgainst {
  unit: BatchUnit;
  /** Plants (cells with plants) of the last count; null when there is none. */
  lastCounted: number | null;
  since: LeftSinceCount;
  /** Units that stand now. */
  standingUnits: number;
}

const whole = (argument: string, value: number) => requireWhole(argument, value, 0, MAX_UNITS);

/**
 * How many plants a new count should find if nothing else happened: the last count less what was potted and lost since. Of cells and
 * pieces no more can be alive than stand; of whole trays and packs a lost one takes its share of the plants. Null without a last count.
 * Throws InputError for numbers that are negative or no whole ones.
 */
export function expectedAlive({ unit, lastCounted, since, standingUnits }: CountAgainst): number | null {
  whole('standingUnits', standingUnits);
  for (const [name, value] of Object.entries(since)) whole(name, value);
  if (lastCounted === null) return null;
  whole('lastCounted', lastCounted);
  if (isUnitOnePlant(unit))
    return Math.max(0, Math.min(lastCounted - since.pottedUnits - since.lostUnits, standingUnits));
  const unpotted = Math.max(0, lastCounted - since.pottedPlants);
  const lost = since.lostUnits + since.failedUnits;
  return lost === 0 ? unpotted : Math.round((unpotted * standingUnits) / (standingUnits + lost));
}

/**
 * Plants that the new count no longer finds: booked as unexplained, a cause may follow. Never negative, since more plants than before
 * have simply come up. Throws InputError for numbers that are negative or no whole ones.
 */
export function missingAt(count: number, against: CountAgainst): number {
  whole('emergedUnits', count);
  const expected = expectedAlive(against);
  return expected === null ? 0 : Math.max(0, expected - count);
}
