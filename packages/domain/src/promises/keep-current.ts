import type { AllocationInstance, Assignment } from './instance/instance.ts';
import { takeOutPins } from './instance/pins.ts';
import { supplyServes } from './instance/supply-serves.ts';

/**
 * What stays of an instance's `current` when nothing new is given to anybody: units that still serve, as far as their plants exist and their
 * lines want them, the lower rank first. It takes a moment whatever the instance, and stands in for `allocate` where that takes too long.
 * Expects an instance without pins (see `takeOutPins`).
 */
export function keepCurrent(instance: AllocationInstance): Assignment[] {
  const supplies = new Map(instance.supply.map((row) => [row.id, row]));
  const demands = new Map(instance.demand.map((row) => [row.id, row]));
  const current = (instance.current ?? []).flatMap((row) => {
    const [supply, demand] = [supplies.get(row.supply), demands.get(row.demand)];
    return supply && demand && supplyServes(supply, demand).serves ? [{ ...row, pinned: true }] : [];
  });
  return takeOutPins({ ...instance, current }).pins;
}
