import { describe, expect, it } from 'vitest';
import type { AllocationInstance } from './instance/instance.ts';
import { promisableKits } from './promise-kit.ts';
import { promisableUnits } from './promise.ts';

const ON = '2027-05-20';
const lot = (id: string, item: string, units: number, plantByOn: string | null = null) => ({
  id,
  item,
  units,
  readyOn: '2027-04-01',
  plantByOn,
  unitValue: 1,
});
const takes = (...items: string[]) => items.map((item) => ({ item, penalty: 0 }));
const instance = (
  supply: AllocationInstance['supply'],
  demand: AllocationInstance['demand'] = [],
): AllocationInstance => ({ today: '2027-04-20', horizonOn: '2027-10-31', supply, demand });
const ask = (item: string, units: number) => ({ accepts: takes(item), units, on: ON });

describe('whole kits', () => {
  it('are as many as the scarcest component allows', () => {
    expect(promisableKits(instance([lot('S1', 'A', 20), lot('S2', 'B', 7)]), [ask('A', 3), ask('B', 2)])).toEqual({
      kits: 3,
      alone: [20, 7],
    });
  });

  it('are none where one component is missing', () => {
    expect(promisableKits(instance([lot('S1', 'A', 20)]), [ask('A', 3), ask('B', 2)])).toEqual({
      kits: 0,
      alone: [20, 0],
    });
  });

  it('leave earlier lines what they hold', () => {
    const line = { id: 'D1', rank: 1, on: ON, units: 14, accepts: takes('A') };
    expect(
      promisableKits(instance([lot('S1', 'A', 20), lot('S2', 'B', 7)], [line]), [ask('A', 3), ask('B', 2)]),
    ).toEqual({ kits: 2, alone: [6, 7] });
  });

  it('are fewer than each component allows alone, where an earlier line takes one or the other', () => {
    const either = { id: 'D1', rank: 1, on: ON, units: 10, accepts: takes('A', 'B') };
    expect(
      promisableKits(instance([lot('S1', 'A', 10), lot('S2', 'B', 10)], [either]), [ask('A', 1), ask('B', 1)]),
    ).toEqual({ kits: 5, alone: [10, 10] });
  });

  it('take nothing that must leave for the client before the day', () => {
    const leaveBy = new Map([['S1', '2027-05-10']]);
    expect(
      promisableKits(instance([lot('S1', 'A', 10, '2027-06-01'), lot('S2', 'B', 10)]), [
        { ...ask('A', 1), leaveBy },
        ask('B', 1),
      ]).kits,
    ).toBe(0);
  });

  it('can all be had at once, and one more could not', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const chance = (at: number, most: number) => (seed * 7919 + at * 104_729) % most;
      const supply = ['A', 'B', 'C'].map((item, at) => lot(`S${at}`, item, 5 + chance(at, 40)));
      const demand = [0, 1].map((at) => ({
        id: `D${at}`,
        rank: at + 1,
        on: ON,
        units: 1 + chance(at + 9, 25),
        accepts: at === 0 ? takes('A', 'B') : takes('B', 'C'),
      }));
      const asks = ['A', 'B', 'C'].map((item, at) => ask(item, 1 + chance(at + 5, 4)));
      const { kits } = promisableKits(instance(supply, demand), asks);
      const isHad = (count: number) => {
        const lines = [...demand];
        return asks.every(({ accepts, units }, at) => {
          const had =
            promisableUnits(instance(supply, lines), { accepts, on: ON, units: units * count }) === units * count;
          lines.push({ id: `K${at}`, rank: 10 + at, on: ON, units: units * count, accepts });
          return had;
        });
      };
      expect(kits === 0 || isHad(kits)).toBe(true);
      expect(isHad(kits + 1)).toBe(false);
    }
  });
});
