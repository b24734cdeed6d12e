import { compareText } from '../kernel/text.ts';
import { Holdings, reckonAnswer } from './answer.ts';
import {
  type AllocationAnswer,
  type AllocationDemand,
  type AllocationInstance,
  type AllocationSupply,
  requireInstance,
} from './instance.ts';
import { supplyServes } from './supply-serves.ts';

interface Candidate {
  supply: AllocationSupply;
  penalty: number;
  heldUnits: number;
}

const LAST = '9999-99-99';

const byPreference = (a: Candidate, b: Candidate) =>
  a.penalty - b.penalty || compareText(a.supply.plantByOn ?? LAST, b.supply.plantByOn ?? LAST);

const byHolding = (a: Candidate, b: Candidate) =>
  Number(b.heldUnits > 0) - Number(a.heldUnits > 0) || compareText(a.supply.id, b.supply.id);

// Candidates of one penalty and one plant-by day, between which only what is held already decides.
function groupEquals(candidates: Candidate[]): Candidate[][] {
  const groups: Candidate[][] = [];
  for (const candidate of [...candidates].sort((a, b) => byPreference(a, b) || byHolding(a, b))) {
    const group = groups.at(-1);
    if (group?.[0] !== undefined && byPreference(group[0], candidate) === 0) group.push(candidate);
    else groups.push([candidate]);
  }
  return groups;
}

const byRank = (a: AllocationDemand, b: AllocationDemand) => a.rank - b.rank || compareText(a.on, b.on) || compareText(a.id, b.id);

function groupByItem(supply: readonly AllocationSupply[]): Map<string, AllocationSupply[]> {
  const groups = new Map<string, AllocationSupply[]>();
  for (const row of supply) {
    const group = groups.get(row.item);
    if (group === undefined) groups.set(row.item, [row]);
    else group.push(row);
  }
  return groups;
}

/**
 * Which units go to which demand.
 *
 * A simple rule, the same on every machine and for every order of input: pinned units stay, as far as the units exist, the
 * lower rank first where they do not. Then demands are served by rank (ties by day, then id), each from the supplies that
 * serve it: least penalty first, then the earliest plant-by day (none comes last), then what it holds already, then
 * id. So the plants that run out of pot life go out first. With one item, and ranks in the order of days, no other
 * rule fills more units (Glover 1967, Naval Research Logistics Quarterly 14(3):313–316). With several items or ranks that
 * do not follow the days it can leave a later demand short that a rearrangement of earlier ones would have filled.
 *
 * A demand of the last rank never takes units from any other. Pinned units stay even where the supply no longer serves
 * the demand; they are then the planner's own choice. Whole units; money in minor units. Throws InputError naming the
 * value for an instance that makes no sense.
 */
export function allocate(input: AllocationInstance): AllocationAnswer {
  const instance = requireInstance(input);
  const { supply, demand, current } = instance;
  const free = new Map(supply.map((row) => [row.id, row.units]));
  const wanting = new Map(demand.map((row) => [row.id, row.units]));
  const before = new Holdings();
  for (const row of current) before.add(row.supply, row.demand, row.units);
  const held = new Holdings();
  const give = (supplyId: string, demandId: string, most: number) => {
    const units = Math.min(most, free.get(supplyId) ?? 0, wanting.get(demandId) ?? 0);
    if (units <= 0) return;
    held.add(supplyId, demandId, units);
    free.set(supplyId, (free.get(supplyId) ?? 0) - units);
    wanting.set(demandId, (wanting.get(demandId) ?? 0) - units);
  };

  const served = [...demand].sort(byRank);
  const place = new Map(served.map((row, at) => [row.id, at]));
  const pinned = current
    .filter((row) => row.pinned === true)
    .sort((a, b) => (place.get(a.demand) ?? 0) - (place.get(b.demand) ?? 0) || compareText(a.supply, b.supply));
  for (const row of pinned) give(row.supply, row.demand, row.units);

  const byItem = groupByItem(supply);
  for (const row of served) {
    const candidates = [...new Set(row.accepts.map((accepted) => accepted.item))]
      .flatMap((item) => byItem.get(item) ?? [])
      .flatMap((from): Candidate[] => {
        const serving = supplyServes(from, row);
        return serving.serves ? [{ supply: from, penalty: serving.penalty, heldUnits: before.of(from.id, row.id) }] : [];
      });
    for (const equals of groupEquals(candidates)) {
      // What it holds of each comes first, so that an answer solved again moves nothing between equals.
      for (const { supply: from, heldUnits } of equals) give(from.id, row.id, heldUnits - held.of(from.id, row.id));
      for (const { supply: from } of equals) give(from.id, row.id, row.units);
    }
  }
  return reckonAnswer(instance, held);
}
