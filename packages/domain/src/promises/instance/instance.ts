import type { CalendarDate } from '../../kernel/dates.ts';

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
