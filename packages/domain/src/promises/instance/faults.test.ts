import { describe, expect, it } from 'vitest';
import { allocate } from '../allocate.ts';
import { findFaults } from './faults.ts';
import type { AllocationInstance } from './instance.ts';

const supply = { id: 'S1', item: 'ASTU@tall-1l', units: 40, readyOn: '2027-04-01', plantByOn: null, unitValue: 650 };
const demand = { id: 'D1', rank: 1, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }] };
const instance: AllocationInstance = {
  today: '2027-04-20',
  horizonOn: '2027-10-31',
  supply: [supply],
  demand: [demand],
};

describe('an allocation instance is refused', () => {
  it.each<[string, string, Partial<AllocationInstance>]>([
    ['today that does not exist', 'today', { today: '2027-02-29' }],
    ['a horizon that does not exist', 'horizonOn', { horizonOn: 'autumn' }],
    ['one supply twice', 'supply[1].id', { supply: [supply, supply] }],
    ['negative units', 'supply[0].units', { supply: [{ ...supply, units: -1 }] }],
    ['half units', 'demand[0].units', { demand: [{ ...demand, units: 1.5 }] }],
    ['a demand for nothing', 'demand[0].units', { demand: [{ ...demand, units: 0 }] }],
    ['a value that is no number', 'supply[0].unitValue', { supply: [{ ...supply, unitValue: Number.NaN }] }],
    ['a ready day that does not exist', 'supply[0].readyOn', { supply: [{ ...supply, readyOn: '2027-04-31' }] }],
    ['a plant-by day that does not exist', 'supply[0].plantByOn', { supply: [{ ...supply, plantByOn: '' }] }],
    ['a demand twice', 'demand[1].id', { demand: [demand, demand] }],
    ['a demand without a name', 'demand[0].id', { demand: [{ ...demand, id: ' ' }] }],
    ['a rank between two ranks', 'demand[0].rank', { demand: [{ ...demand, rank: 0.5 }] }],
    ['a day that does not exist', 'demand[0].on', { demand: [{ ...demand, on: '2027-5-12' }] }],
    [
      'a negative penalty',
      'demand[0].accepts.penalty',
      { demand: [{ ...demand, accepts: [{ item: 'x', penalty: -1 }] }] },
    ],
    [
      'a holding of a supply that is not there',
      'current[0].supply',
      { current: [{ supply: 'S9', demand: 'D1', units: 1 }] },
    ],
    [
      'a holding for a demand that is not there',
      'current[0].demand',
      { current: [{ supply: 'S1', demand: 'D9', units: 1 }] },
    ],
    [
      'more pinned than the supply holds',
      'current[1].units',
      {
        current: [
          { supply: 'S1', demand: 'D1', units: 25, pinned: true },
          { supply: 'S1', demand: 'D2', units: 25, pinned: true },
        ],
        demand: [demand, { ...demand, id: 'D2' }],
      },
    ],
    [
      'more pinned than the demand wants',
      'current[0].units',
      { current: [{ supply: 'S1', demand: 'D1', units: 31, pinned: true }] },
    ],
    [
      'a pin on plants that are not ready',
      'current[0].supply',
      {
        current: [{ supply: 'S1', demand: 'D1', units: 1, pinned: true }],
        supply: [{ ...supply, readyOn: '2027-05-13' }],
      },
    ],
    [
      'a pin on plants that were refused',
      'current[0].supply',
      { current: [{ supply: 'S1', demand: 'D1', units: 1, pinned: true }], demand: [{ ...demand, refuses: ['S1'] }] },
    ],
    ['a holding of nothing', 'current[0].units', { current: [{ supply: 'S1', demand: 'D1', units: 0 }] }],
  ])('for %s, naming %s', (_, argument, change) => {
    expect(() => allocate({ ...instance, ...change })).toThrow(
      expect.objectContaining({ name: 'InputError', argument }),
    );
  });

  it('for all that is wrong with it at once', () => {
    const faults = findFaults({
      ...instance,
      today: 'soon',
      supply: [{ ...supply, units: -1 }, supply],
      demand: [{ ...demand, units: 0.5 }],
    });
    expect(faults.map(({ argument }) => argument)).toEqual([
      'today',
      'supply[1].id',
      'supply[0].units',
      'demand[0].units',
    ]);
  });

  it('but a supply of nothing and a line that accepts nothing are answered', () => {
    const answer = allocate({ ...instance, supply: [{ ...supply, units: 0 }], demand: [{ ...demand, accepts: [] }] });
    expect(answer.short).toEqual([{ demand: 'D1', units: 30 }]);
  });
});
