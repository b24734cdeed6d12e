import type { CalendarDate } from '../../kernel/dates.ts';
import type { AllocationDemand, AllocationSupply } from './instance.ts';

/**
 * Why a supply does not serve a demand, in the order in which it is asked: another item; judged unfit for this line; not ready on
 * its day; to be planted before its day.
 */
export const UNSERVED_REASONS = ['not-accepted', 'refused', 'not-ready', 'past-plant-by'] as const;
export type UnservedReason = (typeof UNSERVED_REASONS)[number];

export type Serving = { serves: true; penalty: number } | { serves: false; reason: UnservedReason };

/** The least penalty at which a demand accepts an item, or null when it does not. */
export function penaltyOf(item: string, demand: AllocationDemand): number | null {
  const penalties = demand.accepts.filter((accepted) => accepted.item === item).map((accepted) => accepted.penalty);
  return penalties.length === 0 ? null : Math.min(...penalties);
}

/**
 * Whether units of a supply can go to a demand, and at which penalty: the item is accepted, the supply is not refused, and
 * readyOn ≤ on ≤ plantByOn, both days included. It asks nothing about how many are left.
 */
export function supplyServes(supply: AllocationSupply, demand: AllocationDemand): Serving {
  const penalty = penaltyOf(supply.item, demand);
  if (penalty === null) return { serves: false, reason: 'not-accepted' };
  if (demand.refuses?.includes(supply.id) === true) return { serves: false, reason: 'refused' };
  if (supply.readyOn > demand.on) return { serves: false, reason: 'not-ready' };
  if (!isServedOn(supply, demand.on)) return { serves: false, reason: 'past-plant-by' };
  return { serves: true, penalty };
}

/** Whether plants are ready on a day and need not be in the ground before it, both days included. */
export const isServedOn = ({ readyOn, plantByOn }: Pick<AllocationSupply, 'readyOn' | 'plantByOn'>, on: CalendarDate) =>
  readyOn <= on && (plantByOn === null || on <= plantByOn);
