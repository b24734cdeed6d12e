import { InputError } from '../kernel/input.ts';
import { compareText } from '../kernel/text.ts';
import { allocate } from './allocate.ts';
import { requireInstance } from './instance/faults.ts';
import type { AllocationAnswer, AllocationDemand, AllocationInstance, Assignment } from './instance/instance.ts';
import { supplyServes, type UnservedReason } from './instance/supply-serves.ts';

export interface ShortageExplanation {
  demand: string;
  wantedUnits: number;
  filledUnits: number;
  shortUnits: number;
  /** Units of accepted items that cannot serve this demand, by the first reason. */
  unservedUnits: Record<Exclude<UnservedReason, 'not-accepted'>, number>;
  /** Units that would serve it and are promised to others, those who hold most first. */
  promisedToOthers: { demand: string; units: number }[];
  promisedToOthersUnits: number;
  /** Units that would serve it and are nobody's. None while it is short. */
  freeUnits: number;
}

/**
 * Why a demand is short, in numbers: where the units of all items it accepts are. Pass the answer when it is at hand, so that
 * a page of shortages solves the instance once. Throws InputError for an unknown demand.
 */
export function explainShortage(
  input: AllocationInstance,
  demandId: string,
  answer?: Pick<AllocationAnswer, 'assignments'>,
): ShortageExplanation {
  const instance = requireInstance(input);
  const demand = instance.demand.find((row) => row.id === demandId);
  if (demand === undefined) throw new InputError('demandId', 'must name a demand of the instance', { id: demandId });
  return explainIn(instance, demand, (answer ?? allocate(instance)).assignments);
}

/** As `explainShortage`, for an instance that makes sense and a demand of it. Only what is assigned of supplies that serve the demand is looked at. */
export function explainIn(
  instance: AllocationInstance,
  demand: AllocationDemand,
  assignments: readonly Assignment[],
): ShortageExplanation {
  const unservedUnits = { refused: 0, 'not-ready': 0, 'past-plant-by': 0 };
  const others = new Map<string, number>();
  let filledUnits = 0;
  let freeUnits = 0;
  const rowsOf = new Map<string, Assignment[]>();
  for (const row of assignments) rowsOf.set(row.supply, [...(rowsOf.get(row.supply) ?? []), row]);
  for (const supply of instance.supply) {
    const rows = rowsOf.get(supply.id) ?? [];
    const mine = rows.filter((row) => row.demand === demand.id).reduce((total, row) => total + row.units, 0);
    filledUnits += mine;
    const serving = supplyServes(supply, demand);
    if (!serving.serves) {
      // What is pinned to this demand against the rules is filled all the same, and not counted as out of reach.
      if (serving.reason !== 'not-accepted') unservedUnits[serving.reason] += supply.units - mine;
      continue;
    }
    let left = supply.units - mine;
    for (const row of rows.filter((other) => other.demand !== demand.id)) {
      others.set(row.demand, (others.get(row.demand) ?? 0) + row.units);
      left -= row.units;
    }
    freeUnits += left;
  }
  const promisedToOthers = [...others].map(([id, units]) => ({ demand: id, units }));
  promisedToOthers.sort((a, b) => b.units - a.units || compareText(a.demand, b.demand));
  return {
    demand: demand.id,
    wantedUnits: demand.units,
    filledUnits,
    shortUnits: demand.units - filledUnits,
    unservedUnits,
    promisedToOthers,
    promisedToOthersUnits: promisedToOthers.reduce((total, row) => total + row.units, 0),
    freeUnits,
  };
}
