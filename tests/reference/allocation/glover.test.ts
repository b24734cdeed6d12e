import {
  addDays,
  allocate,
  type AllocationDemand,
  type AllocationInstance,
  type AllocationSupply,
} from '@rootclock/domain';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/*
 * Source: F. Glover, "Maximum matching in a convex bipartite graph", Naval Research Logistics Quarterly 14(3), 1967, 313–316.
 * With one item, supplies that are good for an interval of days, and demands on days, serving the days in order, each from
 * the free supply whose interval ends first, fills as many units as can be filled at all.
 */
const ITEM = 'ASTU@tall-1l';
const FIRST_ON = '2027-04-01';
const day = fc.integer({ min: 0, max: 14 });

const supplies = fc.array(
  fc.record({ from: day, days: fc.option(fc.integer({ min: 0, max: 9 })), units: fc.integer({ min: 0, max: 3 }) }),
  {
    maxLength: 6,
  },
);
const demands = fc.array(fc.record({ day, units: fc.integer({ min: 1, max: 4 }) }), { maxLength: 6 });

const instances: fc.Arbitrary<AllocationInstance> = fc.record({ supplies, demands }).map((drawn) => ({
  today: FIRST_ON,
  horizonOn: addDays(FIRST_ON, 30),
  supply: drawn.supplies.map(({ from, days, units }, at) => ({
    id: `S${at}`,
    item: ITEM,
    units,
    readyOn: addDays(FIRST_ON, from),
    plantByOn: days === null ? null : addDays(FIRST_ON, from + days),
    unitValue: 1,
  })),
  demand: [...drawn.demands]
    .sort((a, b) => a.day - b.day)
    .map((row, at) => ({
      id: `D${at}`,
      rank: at + 1,
      on: addDays(FIRST_ON, row.day),
      units: row.units,
      accepts: [{ item: ITEM, penalty: 0 }],
    })),
  current: [],
}));

const inTime = (supply: AllocationSupply, demand: AllocationDemand) =>
  supply.readyOn <= demand.on && (supply.plantByOn === null || demand.on <= supply.plantByOn);

// Most units that can be filled, by augmenting paths over single plants: slow, and independent of any order of serving.
function mostFilled(supply: readonly AllocationSupply[], demand: readonly AllocationDemand[]): number {
  const plants = supply.flatMap((row) => Array.from({ length: row.units }, () => row));
  const wishes = demand.flatMap((row) => Array.from({ length: row.units }, () => row));
  const wishOfPlant = new Map<number, number>();
  const augment = (wish: number, tried: Set<number>): boolean => {
    const row = wishes[wish];
    for (const [plant, from] of plants.entries()) {
      if (row === undefined || tried.has(plant) || !inTime(from, row)) continue;
      tried.add(plant);
      const holder = wishOfPlant.get(plant);
      if (holder === undefined || augment(holder, tried)) {
        wishOfPlant.set(plant, wish);
        return true;
      }
    }
    return false;
  };
  return wishes.filter((_, wish) => augment(wish, new Set())).length;
}

describe('one item, lots good for an interval of days, lines ranked by day', () => {
  it('are filled as far as they can be, and so are the first lines by themselves', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const { short, totals } = allocate(instance);
        expect(totals.filled).toBe(mostFilled(instance.supply, instance.demand));
        for (const count of instance.demand.keys()) {
          const first = instance.demand.slice(0, count);
          const lacking = short
            .filter((row) => first.some(({ id }) => id === row.demand))
            .reduce((sum, row) => sum + row.units, 0);
          expect(first.reduce((sum, row) => sum + row.units, 0) - lacking).toBe(mostFilled(instance.supply, first));
        }
      }),
    );
  });

  it('would be filled less by taking any lot that happens to be in time', () => {
    const lot = { item: ITEM, units: 1, readyOn: FIRST_ON, unitValue: 1 };
    const line = { units: 1, accepts: [{ item: ITEM, penalty: 0 }] };
    const answer = allocate({
      today: FIRST_ON,
      horizonOn: addDays(FIRST_ON, 30),
      supply: [
        { ...lot, id: 'long', plantByOn: addDays(FIRST_ON, 9) },
        { ...lot, id: 'short', plantByOn: addDays(FIRST_ON, 2) },
      ],
      demand: [
        { ...line, id: 'early', rank: 1, on: addDays(FIRST_ON, 1) },
        { ...line, id: 'late', rank: 2, on: addDays(FIRST_ON, 5) },
      ],
    });
    expect(answer.short).toEqual([]);
    expect(answer.assignments).toEqual([
      { supply: 'long', demand: 'late', units: 1 },
      { supply: 'short', demand: 'early', units: 1 },
    ]);
  });
});
