import { type CalendarDate, requireDate } from '../kernel/dates.ts';
import { MAX_UNITS, requireUnits, requireWhole } from '../kernel/input.ts';
import { compareText } from '../kernel/text.ts';
import { expectedLiving } from '../stock/winter/expected-living.ts';
import type { PlanDemand, PlanSupply } from './demand-facts.ts';

/** What a demand lacks. */
export interface Shortage {
  demand: PlanDemand;
  units: number;
}

/** Plants of a supply that a demand takes on its day. */
export interface Given {
  supplyId: string;
  demandId: string;
  on: CalendarDate;
  plants: number;
}

/** Rounding of a share must not cost a plant that is there. */
const HAIR = 1e-9;

/** The share of a supply's units of today that is expected to live on a day. */
export function livingShare(supply: PlanSupply, on: CalendarDate): number {
  const { countedOn, lossRatePerDay, winterSurvival, winter } = supply;
  return expectedLiving({ units: 1, from: countedOn, on, lossRatePerDay, winterSurvival, winter });
}

const byTurn = (a: PlanDemand, b: PlanDemand) =>
  (a.rank ?? Number.MAX_SAFE_INTEGER) - (b.rank ?? Number.MAX_SAFE_INTEGER) ||
  compareText(a.on, b.on) ||
  compareText(a.id, b.id);

const serves = (supply: PlanSupply, { on, refuses }: PlanDemand) =>
  supply.readyOn !== null &&
  supply.readyOn <= on &&
  (supply.plantByOn === null || supply.plantByOn >= on) &&
  !refuses.includes(supply.id);

const LAST = '9999-12-31';

/** Supplies that serve a demand: the least penalty first, then what must be planted first. */
function candidates(demand: PlanDemand, byItem: ReadonlyMap<string, PlanSupply[]>): PlanSupply[] {
  const penalties = new Map<string, number>();
  for (const { item, penalty } of demand.accepts)
    penalties.set(item, Math.min(penalty, penalties.get(item) ?? penalty));
  return [...penalties]
    .flatMap(([item, penalty]) =>
      (byItem.get(item) ?? []).filter((supply) => serves(supply, demand)).map((supply) => ({ supply, penalty })),
    )
    .sort(
      (a, b) =>
        a.penalty - b.penalty ||
        compareText(a.supply.plantByOn ?? LAST, b.supply.plantByOn ?? LAST) ||
        compareText(a.supply.id, b.supply.id),
    )
    .map(({ supply }) => supply);
}

function requireFacts(demands: readonly PlanDemand[], supplies: readonly PlanSupply[]): void {
  for (const [at, demand] of demands.entries()) {
    requireUnits(`demands.${at}.units`, demand.units);
    requireDate(`demands.${at}.on`, demand.on);
  }
  for (const [at, supply] of supplies.entries()) {
    requireWhole(`supplies.${at}.units`, supply.units, 0, MAX_UNITS);
    requireDate(`supplies.${at}.countedOn`, supply.countedOn);
  }
}

/**
 * What each demand gets on its day and what it lacks, in the order in which demands are served: open lines by rank, then what is expected, by day. First every
 * demand keeps what is reserved for it, then each takes of what is free. A plant that is to be handed over on a later day costs as many of today as
 * must stand for one to live until then, so that a shortage that only losses will bring is seen. Whole plants; the order of input does not matter.
 * Throws InputError for units that are no whole number above 0 (supplies: 0 or more) and days that do not exist.
 */
export function serveDemands(
  demands: readonly PlanDemand[],
  supplies: readonly PlanSupply[],
): { given: Given[]; short: Shortage[] } {
  requireFacts(demands, supplies);
  const byItem = new Map<string, PlanSupply[]>();
  for (const supply of supplies) byItem.set(supply.item, [...(byItem.get(supply.item) ?? []), supply]);
  const byId = new Map(supplies.map((supply) => [supply.id, supply]));
  const free = new Map(supplies.map(({ id, units }) => [id, units]));
  const wanting = new Map(demands.map(({ id, units }) => [id, units]));
  const given: Given[] = [];
  /** Gives living plants of a day, at most as many as `most` units of today make. */
  const give = (supply: PlanSupply, demand: PlanDemand, most: number) => {
    const share = livingShare(supply, demand.on);
    const left = free.get(supply.id) ?? 0;
    const plants = Math.min(wanting.get(demand.id) ?? 0, Math.floor(Math.min(left, most) * share + HAIR));
    if (plants <= 0) return;
    wanting.set(demand.id, (wanting.get(demand.id) ?? 0) - plants);
    free.set(supply.id, Math.max(0, left - plants / share));
    given.push({ supplyId: supply.id, demandId: demand.id, on: demand.on, plants });
  };
  const served = [...demands].sort(byTurn);
  for (const demand of served) {
    for (const { supplyId, units } of [...demand.held].sort((a, b) => compareText(a.supplyId, b.supplyId))) {
      const supply = byId.get(supplyId);
      if (supply) give(supply, demand, units);
    }
  }
  for (const demand of served) for (const supply of candidates(demand, byItem)) give(supply, demand, supply.units);
  return {
    given,
    short: served.map((demand) => ({ demand, units: wanting.get(demand.id) ?? 0 })).filter(({ units }) => units > 0),
  };
}
