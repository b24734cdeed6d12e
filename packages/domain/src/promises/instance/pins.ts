import { compareText } from '../../kernel/text.ts';
import type { AllocationInstance, Assignment } from './instance.ts';

/**
 * The pinned units of an instance, and what is left to decide without them. Where more is pinned than there is, or than a line wants, the lower
 * rank keeps its pins first; whether pinned units serve is not asked, since they are somebody's own choice. Lines that want nothing more are
 * left out. Expects an instance whose rows name each other rightly.
 */
export function takeOutPins(instance: AllocationInstance): { pins: Assignment[]; rest: AllocationInstance } {
  const { supply, demand, current = [] } = instance;
  const there = new Map(supply.map(({ id, units }) => [id, units]));
  const wanted = new Map(demand.map(({ id, units }) => [id, units]));
  const ranks = new Map(demand.map(({ id, rank }) => [id, rank]));
  const pins = current
    .filter(({ pinned }) => pinned === true)
    .sort(
      (a, b) =>
        (ranks.get(a.demand) ?? 0) - (ranks.get(b.demand) ?? 0) ||
        compareText(a.demand, b.demand) ||
        compareText(a.supply, b.supply),
    )
    .flatMap((row): Assignment[] => {
      const units = Math.min(row.units, there.get(row.supply) ?? 0, wanted.get(row.demand) ?? 0);
      if (units <= 0) return [];
      there.set(row.supply, (there.get(row.supply) ?? 0) - units);
      wanted.set(row.demand, (wanted.get(row.demand) ?? 0) - units);
      return [{ supply: row.supply, demand: row.demand, units }];
    });
  return {
    pins,
    rest: {
      ...instance,
      supply: supply.map((row) => ({ ...row, units: there.get(row.id) ?? 0 })),
      demand: demand
        .filter(({ id }) => (wanted.get(id) ?? 0) > 0)
        .map((row) => ({ ...row, units: wanted.get(row.id) ?? 0 })),
      current: current.filter((row) => row.pinned !== true && (wanted.get(row.demand) ?? 0) > 0),
    },
  };
}
