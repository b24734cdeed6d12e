import { daysBetween } from '../../kernel/dates.ts';
import { compareText } from '../../kernel/text.ts';
import type { AllocationDemand, AllocationInstance, AllocationSupply } from '../instance/instance.ts';
import { isServedOn } from '../instance/supply-serves.ts';

/** Days that count for plants without a plant-by day, so that they are given last. */
const NEVER_DAYS = 36_500;

/**
 * What of an instance can still be decided, in numbers: supplies and demands in order of their ids, and the pairs of them that serve, in order
 * of supply and then demand.
 */
export interface Transport {
  supplies: readonly AllocationSupply[];
  demands: readonly AllocationDemand[];
  /** Units of each supply, and units that each demand wants. */
  units: readonly number[];
  wanted: readonly number[];
  /** The place of each demand's rank among all ranks, 0 for the lowest. */
  rankAt: readonly number[];
  pairs: readonly Pair[];
}

export interface Pair {
  supply: number;
  demand: number;
  penalty: number;
  /** Floating units that the demand holds of the supply now. */
  held: number;
  /** Value of a unit that would decline within the horizon, 0 for others. */
  savedValue: number;
  /** Days from today to the plant-by day; 36,500 where there is none. */
  days: number;
}

const byId = (a: { id: string }, b: { id: string }) => compareText(a.id, b.id);

/** Reads an instance without pins; `requireInstance` has passed it. */
export function readTransport({ today, horizonOn, supply, demand, current = [] }: AllocationInstance): Transport {
  const supplies = [...supply].sort(byId);
  const demands = [...demand].sort(byId);
  const ranks = new Map(
    [...new Set(demands.map(({ rank }) => rank))].sort((a, b) => a - b).map((rank, at) => [rank, at]),
  );
  const demandAt = new Map(demands.map(({ id }, at) => [id, at]));
  const heldOf = new Map<string, Map<number, number>>();
  for (const row of current) {
    const held = heldOf.get(row.supply) ?? new Map<number, number>();
    const at = demandAt.get(row.demand) ?? -1;
    heldOf.set(row.supply, held.set(at, (held.get(at) ?? 0) + row.units));
  }
  const wishes = new Map<string, { demand: number; penalty: number }[]>();
  const refused = demands.map(({ refuses }) => new Set(refuses));
  for (const [at, row] of demands.entries()) {
    for (const [item, penalty] of leastPenalties(row)) {
      const wishing = wishes.get(item);
      if (wishing) wishing.push({ demand: at, penalty });
      else wishes.set(item, [{ demand: at, penalty }]);
    }
  }
  const pairs: Pair[] = [];
  for (const [at, row] of supplies.entries()) {
    if (row.units === 0) continue;
    const savedValue = row.plantByOn !== null && row.plantByOn <= horizonOn ? row.unitValue : 0;
    const days = row.plantByOn === null ? NEVER_DAYS : daysBetween(today, row.plantByOn);
    const held = heldOf.get(row.id);
    for (const { demand: wishing, penalty } of wishes.get(row.item) ?? []) {
      // The rule of `supplyServes`, with the item looked up instead of compared.
      const { on } = demands[wishing] as AllocationDemand;
      if (!isServedOn(row, on) || refused[wishing]?.has(row.id) === true) continue;
      pairs.push({ supply: at, demand: wishing, penalty, held: held?.get(wishing) ?? 0, savedValue, days });
    }
  }
  return {
    supplies,
    demands,
    units: supplies.map(({ units }) => units),
    wanted: demands.map(({ units }) => units),
    rankAt: demands.map(({ rank }) => ranks.get(rank) ?? 0),
    pairs,
  };
}

function leastPenalties({ accepts }: AllocationDemand): Map<string, number> {
  const least = new Map<string, number>();
  for (const { item, penalty } of accepts) least.set(item, Math.min(penalty, least.get(item) ?? penalty));
  return least;
}

/** The demands of each rank, the lowest rank first. */
export function membersByRank(rankAt: readonly number[]): number[][] {
  const members: number[][] = [];
  for (const [demand, rank] of rankAt.entries()) (members[rank] ??= []).push(demand);
  return members.filter((of) => of.length > 0);
}
