// What an answer is worth, reckoned from its assignments alone and from the words of the specification, not by what the allocation itself uses.
import type { AllocationDemand, AllocationInstance, AllocationSupply, Assignment } from '@rootclock/domain';

export interface Goals {
  /** Units by rank, the lowest first. */
  filled: number[];
  penalty: number;
  savedValue: number;
  days: number;
  moved: number;
}

const DAYS_OF_NEVER = 36_500;
const MS_A_DAY = 86_400_000;

export const ranksOf = ({ demand }: AllocationInstance): number[] =>
  [...new Set(demand.map(({ rank }) => rank))].sort((a, b) => a - b);

export const isServing = (
  { id, item, readyOn, plantByOn }: AllocationSupply,
  { accepts, refuses = [], on }: AllocationDemand,
): boolean =>
  accepts.some((accepted) => accepted.item === item) &&
  !refuses.includes(id) &&
  readyOn <= on &&
  (plantByOn === null || on <= plantByOn);

export const penaltyOfUnit = ({ item }: AllocationSupply, { accepts }: AllocationDemand): number =>
  Math.min(...accepts.flatMap((accepted) => (accepted.item === item ? [accepted.penalty] : [])));

export const valueOfUnit = ({ horizonOn }: AllocationInstance, { plantByOn, unitValue }: AllocationSupply): number =>
  plantByOn !== null && plantByOn <= horizonOn ? unitValue : 0;

export const daysOfUnit = ({ today }: AllocationInstance, { plantByOn }: AllocationSupply): number =>
  plantByOn === null ? DAYS_OF_NEVER : Math.round((Date.parse(plantByOn) - Date.parse(today)) / MS_A_DAY);

const keyOf = ({ supply, demand }: { supply: string; demand: string }) => `${supply}\n${demand}`;

/** Units by pair of ids. */
export function byPair(rows: readonly Assignment[]): Map<string, number> {
  const units = new Map<string, number>();
  for (const row of rows) units.set(keyOf(row), (units.get(keyOf(row)) ?? 0) + row.units);
  return units;
}

export const pairKey = (supply: string, demand: string) => keyOf({ supply, demand });

export function goalsOf(instance: AllocationInstance, assignments: readonly Assignment[]): Goals {
  const supplies = new Map(instance.supply.map((row) => [row.id, row]));
  const demands = new Map(instance.demand.map((row) => [row.id, row]));
  const held = byPair(assignments);
  const ranks = ranksOf(instance);
  const goals: Goals = { filled: ranks.map(() => 0), penalty: 0, savedValue: 0, days: 0, moved: 0 };
  for (const { supply, demand, units } of assignments) {
    const [from, to] = [supplies.get(supply), demands.get(demand)];
    if (!from || !to) throw new Error(`${supply} or ${demand} is not of the instance`);
    const rank = ranks.indexOf(to.rank);
    goals.filled[rank] = (goals.filled[rank] ?? 0) + units;
    goals.penalty += units * penaltyOfUnit(from, to);
    goals.savedValue += units * valueOfUnit(instance, from);
    goals.days += units * daysOfUnit(instance, from);
  }
  for (const [pair, units] of byPair(instance.current ?? [])) goals.moved += Math.max(0, units - (held.get(pair) ?? 0));
  return goals;
}

/** Everything for which assignments cannot be an answer, whatever they are worth. */
export function breaksOf(instance: AllocationInstance, assignments: readonly Assignment[]): string[] {
  const { supply, demand, current = [] } = instance;
  const held = byPair(assignments);
  const unitsOf = (side: 'supply' | 'demand', id: string) =>
    assignments.reduce((sum, row) => (row[side] === id ? sum + row.units : sum), 0);
  const rows = [...supply.map((row) => ['supply', row] as const), ...demand.map((row) => ['demand', row] as const)];
  const supplies = new Map(supply.map((row) => [row.id, row]));
  const demands = new Map(demand.map((row) => [row.id, row]));
  return [
    ...assignments
      .filter(({ units }) => !Number.isInteger(units) || units <= 0)
      .map((row) => `${row.units} units of ${row.supply} for ${row.demand}`),
    ...assignments
      .filter((row) => {
        const [from, to] = [supplies.get(row.supply), demands.get(row.demand)];
        return !from || !to || !isServing(from, to);
      })
      .map((row) => `${row.supply} does not serve ${row.demand}`),
    ...rows
      .filter(([side, { id, units }]) => unitsOf(side, id) > units)
      .map(([side, { id }]) => `${side} ${id} has more than its units`),
    ...[...byPair(current.filter(({ pinned }) => pinned === true))]
      .filter(([pair, units]) => (held.get(pair) ?? 0) < units)
      .map(([pair]) => `the pin of ${pair.replace('\n', ' on ')} is not kept`),
  ];
}
