import { describe, expect, it } from 'vitest';
import type { AllocationInstance } from './instance.ts';
import { takeOutPins } from './pins.ts';

const lot = {
  id: 'S1',
  item: 'ASTU@tall-1l',
  units: 40,
  readyOn: '2027-04-01',
  plantByOn: '2027-05-01',
  unitValue: 650,
};
const line = { id: 'D1', rank: 1, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }] };
const instance = (current: AllocationInstance['current']): AllocationInstance => ({
  today: '2027-04-20',
  horizonOn: '2027-10-31',
  supply: [lot],
  demand: [line, { ...line, id: 'D2', rank: 2 }],
  current,
});

describe('pinned units', () => {
  it('stay where the lot no longer serves', () => {
    expect(takeOutPins(instance([{ supply: 'S1', demand: 'D2', units: 25, pinned: true }])).pins).toEqual([
      { supply: 'S1', demand: 'D2', units: 25 },
    ]);
  });

  it('stay only as far as they exist, the lower rank first', () => {
    const current = [
      { supply: 'S1', demand: 'D2', units: 30, pinned: true },
      { supply: 'S1', demand: 'D1', units: 30, pinned: true },
    ];
    expect(takeOutPins(instance(current)).pins).toEqual([
      { supply: 'S1', demand: 'D1', units: 30 },
      { supply: 'S1', demand: 'D2', units: 10 },
    ]);
  });

  it('stay only as far as the line still wants them', () => {
    expect(takeOutPins(instance([{ supply: 'S1', demand: 'D1', units: 35, pinned: true }])).pins).toEqual([
      { supply: 'S1', demand: 'D1', units: 30 },
    ]);
  });

  it('leave the rest of lot, line and floating units to be decided', () => {
    const current = [
      { supply: 'S1', demand: 'D1', units: 12, pinned: true },
      { supply: 'S1', demand: 'D1', units: 5 },
    ];
    const { rest } = takeOutPins(instance(current));
    expect(rest.supply).toEqual([{ ...lot, units: 28 }]);
    expect(rest.demand.map(({ id, units }) => ({ id, units }))).toEqual([
      { id: 'D1', units: 18 },
      { id: 'D2', units: 30 },
    ]);
    expect(rest.current).toEqual([{ supply: 'S1', demand: 'D1', units: 5 }]);
  });

  it('leave out a line that wants nothing more', () => {
    const current = [
      { supply: 'S1', demand: 'D1', units: 30, pinned: true },
      { supply: 'S1', demand: 'D1', units: 5 },
    ];
    const { rest } = takeOutPins(instance(current));
    expect({ demand: rest.demand.map(({ id }) => id), current: rest.current }).toEqual({ demand: ['D2'], current: [] });
  });
});
