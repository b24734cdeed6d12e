import { MAX_UNITS } from '../kernel/input.ts';
import type { AllocationInstance } from './instance/instance.ts';
import { promisableUnits, type PromiseAsk } from './promise.ts';

/** A component of a kit: what it asks, with the units for one kit. */
export type KitAsk = PromiseAsk;

export interface KitPromise {
  /** Whole kits that can be promised without shortening any line. */
  kits: number;
  /** The units of each component that could be promised alone, in the order of the asks. */
  alone: number[];
}

/**
 * How many whole kits can be promised: the most for which every component can be had at once, each component's line behind those before it.
 * At most the least of (what could be promised of a component alone / its units in a kit), and fewer where an earlier line may take one
 * component or another and so leaves only one of them. Throws InputError as `promise` does.
 */
export function promisableKits(instance: AllocationInstance, asks: readonly KitAsk[]): KitPromise {
  const alone = asks.map((ask) => promisableUnits(instance, { ...ask, units: MAX_UNITS }));
  let least = 0;
  let most = Math.min(...asks.map(({ units }, at) => Math.floor((alone[at] ?? 0) / units)));
  // Components seldom compete, so the most is tried before the range is halved.
  if (most > 0 && canHave(instance, asks, most)) least = most;
  while (least < most) {
    const tried = Math.ceil((least + most) / 2);
    if (canHave(instance, asks, tried)) least = tried;
    else most = tried - 1;
  }
  return { kits: least, alone };
}

/** Longer than any other id, so it is none of them. */
const idFor = (at: number, demand: AllocationInstance['demand']) =>
  `${'+'.repeat(1 + Math.max(0, ...demand.map(({ id }) => id.length)))}${at}`;

function canHave(instance: AllocationInstance, asks: readonly KitAsk[], kits: number): boolean {
  let demand = instance.demand;
  for (const [at, { units, accepts, on, refuses = [], leaveBy }] of asks.entries()) {
    const wanted = units * kits;
    const ask: PromiseAsk = { accepts, on, refuses, units: wanted, ...(leaveBy ? { leaveBy } : {}) };
    if (wanted > MAX_UNITS || promisableUnits({ ...instance, demand }, ask) < wanted) return false;
    const gone = instance.supply.filter(({ id }) => (leaveBy?.get(id) ?? on) < on).map(({ id }) => id);
    const rank = 1 + demand.reduce((last, row) => Math.max(last, row.rank), 0);
    // A demand cannot say by when a supply must leave for it, so what is gone by its day is refused.
    demand = [
      ...demand,
      { id: idFor(at, demand), rank, on, units: wanted, accepts, refuses: [...new Set([...refuses, ...gone])] },
    ];
  }
  return true;
}
