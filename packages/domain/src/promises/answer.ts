import { compareText } from '../kernel/text.ts';
import type { AllocationAnswer, AllocationInstance, Assignment } from './instance/instance.ts';
import { penaltyOf } from './instance/supply-serves.ts';

/** Units by supply and demand. */
export class Holdings {
  readonly #units = new Map<string, Map<string, number>>();

  add(supply: string, demand: string, units: number): void {
    const bySupply = this.#units.get(supply) ?? new Map<string, number>();
    this.#units.set(supply, bySupply.set(demand, this.of(supply, demand) + units));
  }

  of(supply: string, demand: string): number {
    return this.#units.get(supply)?.get(demand) ?? 0;
  }

  rows(): Assignment[] {
    return [...this.#units].flatMap(([supply, byDemand]) =>
      [...byDemand].map(([demand, units]) => ({ supply, demand, units })),
    );
  }
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);

function unitsBy(rows: readonly Assignment[], side: 'supply' | 'demand'): Map<string, number> {
  const units = new Map<string, number>();
  for (const row of rows) units.set(row[side], (units.get(row[side]) ?? 0) + row.units);
  return units;
}

/**
 * What follows from a set of assignments: who is short, what declines, and the totals by which answers are compared. It is the
 * same for every way of finding the assignments, which are taken as they are.
 */
export function reckonAnswer(instance: Required<AllocationInstance>, held: Holdings): AllocationAnswer {
  const { supply, demand, current, horizonOn } = instance;
  const assignments = held
    .rows()
    .filter((row) => row.units > 0)
    .sort((a, b) => compareText(a.supply, b.supply) || compareText(a.demand, b.demand));
  const given = unitsBy(assignments, 'supply');
  const got = unitsBy(assignments, 'demand');
  const suppliesById = new Map(supply.map((row) => [row.id, row]));
  const demandsById = new Map(demand.map((row) => [row.id, row]));
  const mustGo = supply.filter((row) => row.plantByOn !== null && row.plantByOn <= horizonOn);
  const before = new Holdings();
  for (const row of current) before.add(row.supply, row.demand, row.units);
  const penalties = assignments.map((row) => {
    const from = suppliesById.get(row.supply);
    const to = demandsById.get(row.demand);
    return from === undefined || to === undefined ? 0 : row.units * (penaltyOf(from.item, to) ?? 0);
  });
  return {
    assignments,
    short: demand
      .map((row) => ({ demand: row.id, units: row.units - (got.get(row.id) ?? 0) }))
      .filter((row) => row.units > 0)
      .sort((a, b) => compareText(a.demand, b.demand)),
    declining: mustGo
      .map((row) => ({ supply: row.id, units: row.units - (given.get(row.id) ?? 0) }))
      .filter((row) => row.units > 0)
      .sort((a, b) => compareText(a.supply, b.supply)),
    totals: {
      filled: sum(assignments.map((row) => row.units)),
      penalty: sum(penalties),
      savedValue: sum(mustGo.map((row) => row.unitValue * (given.get(row.id) ?? 0))),
      moved: sum(before.rows().map((row) => Math.max(0, row.units - held.of(row.supply, row.demand)))),
    },
  };
}
