import { type CalendarDate, requireDate } from '../kernel/dates.ts';
import { InputError, MAX_UNITS, requireText, requireUnits, requireWhole } from '../kernel/input.ts';

/** Plants that can be promised: a lot, or a growing batch at its cautious yield. */
export interface AllocationSupply {
  id: string;
  /** Plant and container, as orders name them. */
  item: string;
  /** Whole units, 0 for what is held. */
  units: number;
  readyOn: CalendarDate;
  /** Null when they never decline. */
  plantByOn: CalendarDate | null;
  /** Value of one unit in minor units of money. */
  unitValue: number;
}

export interface AcceptedItem {
  item: string;
  /** How unwelcome the item is as a substitute; 0 is what was asked for. */
  penalty: number;
}

/** One open line: so many units on a day. */
export interface AllocationDemand {
  id: string;
  /** A lower rank was promised earlier and is served first. */
  rank: number;
  on: CalendarDate;
  units: number;
  /** Supplies that were judged unfit for this line, lot by lot (see `judgeLot`). */
  refuses?: readonly string[];
  accepts: readonly AcceptedItem[];
}

/** Units of a supply that a demand holds now. Pinned ones stay where they are. */
export interface AllocationCurrent {
  supply: string;
  demand: string;
  units: number;
  pinned?: boolean;
}

export interface AllocationInstance {
  today: CalendarDate;
  /** The end of the season: what must be planted by then and is not promised counts as declining. */
  horizonOn: CalendarDate;
  supply: readonly AllocationSupply[];
  demand: readonly AllocationDemand[];
  current?: readonly AllocationCurrent[];
}

export interface Assignment {
  supply: string;
  demand: string;
  units: number;
}

export interface AllocationAnswer {
  /** By supply, then demand; never two of one pair. */
  assignments: Assignment[];
  /** What demands lack, by demand. */
  short: { demand: string; units: number }[];
  /** Unpromised units that must be planted within the horizon, by supply. */
  declining: { supply: string; units: number }[];
  totals: {
    /** Units assigned. */
    filled: number;
    /** Σ units × penalty of the item; a pinned item that is not accepted adds nothing. */
    penalty: number;
    /** Σ units × unit value of supplies that must be planted within the horizon. */
    savedValue: number;
    /** Units that current holdings lose. */
    moved: number;
  };
}

const MAX_RANK = 1_000_000_000;
const MAX_PENALTY = 1_000_000;
const MAX_UNIT_VALUE = 100_000_000;

function requireList<T>(argument: string, value: readonly T[]): readonly T[] {
  if (!Array.isArray(value)) throw new InputError(argument, 'must be a list');
  return value;
}

function requireDistinct(argument: string, rows: readonly { id: string }[]): Set<string> {
  const ids = new Set<string>();
  for (const [at, { id }] of rows.entries()) {
    requireText(`${argument}[${at}].id`, id);
    if (ids.has(id)) throw new InputError(`${argument}[${at}].id`, 'must not occur twice', { id });
    ids.add(id);
  }
  return ids;
}

function requireKnown(argument: string, id: string, known: ReadonlySet<string>): void {
  if (!known.has(id)) throw new InputError(argument, 'must name a row of the same instance', { id });
}

/** Returns the instance when it can be solved. Throws InputError naming the value, as in 'supply[2].units', otherwise. */
export function requireInstance(instance: AllocationInstance): Required<AllocationInstance> {
  const { today, horizonOn, supply, demand, current = [] } = instance;
  requireDate('today', today);
  requireDate('horizonOn', horizonOn);
  const supplies = requireDistinct('supply', requireList('supply', supply));
  const demands = requireDistinct('demand', requireList('demand', demand));
  for (const [at, row] of supply.entries()) {
    requireText(`supply[${at}].item`, row.item);
    requireWhole(`supply[${at}].units`, row.units, 0, MAX_UNITS);
    requireDate(`supply[${at}].readyOn`, row.readyOn);
    if (row.plantByOn !== null) requireDate(`supply[${at}].plantByOn`, row.plantByOn);
    requireWhole(`supply[${at}].unitValue`, row.unitValue, 0, MAX_UNIT_VALUE);
  }
  for (const [at, row] of demand.entries()) {
    requireWhole(`demand[${at}].rank`, row.rank, 0, MAX_RANK);
    requireDate(`demand[${at}].on`, row.on);
    requireUnits(`demand[${at}].units`, row.units);
    for (const id of requireList(`demand[${at}].refuses`, row.refuses ?? [])) requireText(`demand[${at}].refuses`, id);
    for (const { item, penalty } of requireList(`demand[${at}].accepts`, row.accepts)) {
      requireText(`demand[${at}].accepts.item`, item);
      requireWhole(`demand[${at}].accepts.penalty`, penalty, 0, MAX_PENALTY);
    }
  }
  for (const [at, row] of requireList('current', current).entries()) {
    requireKnown(`current[${at}].supply`, row.supply, supplies);
    requireKnown(`current[${at}].demand`, row.demand, demands);
    requireUnits(`current[${at}].units`, row.units);
  }
  return { today, horizonOn, supply, demand, current };
}
