import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { allocate } from './allocate.ts';
import { explainAssignments } from './explain-assignment.ts';
import type { AllocationDemand, AllocationInstance, AllocationSupply } from './instance/instance.ts';

const lot = (id: string, more: Partial<AllocationSupply> = {}): AllocationSupply => ({
  id,
  item: 'ASTU@tall-1l',
  units: 10,
  readyOn: '2027-04-01',
  plantByOn: '2027-06-15',
  unitValue: 1,
  ...more,
});
const line = (id: string, more: Partial<AllocationDemand> = {}): AllocationDemand => ({
  id,
  rank: 1,
  on: '2027-05-12',
  units: 10,
  accepts: [
    { item: 'ASTU@tall-1l', penalty: 0 },
    { item: 'ASIN@tall-1l', penalty: 2 },
  ],
  ...more,
});
const season = (supply: AllocationSupply[], demand: AllocationDemand[]): AllocationInstance => ({
  today: '2027-04-20',
  horizonOn: '2027-10-31',
  supply,
  demand,
});
const explain = (instance: AllocationInstance, id = 'D1') =>
  explainAssignments(instance, id, allocate(instance).assignments);

describe('a line holds plants', () => {
  it('because nothing else serves it', () => {
    expect(explain(season([lot('S1'), lot('S2', { readyOn: '2027-06-01' })], [line('D1')]))).toEqual([
      { supply: 'S1', units: 10, reason: 'only', instead: null, sooner: [] },
    ]);
  });

  it('because they must leave their pots first', () => {
    expect(explain(season([lot('S1', { plantByOn: '2027-05-20' }), lot('S2')], [line('D1')]))).toMatchObject([
      { supply: 'S1', reason: 'leaves-first', instead: 'S2' },
    ]);
  });

  it('because they were asked for, though a substitute must leave sooner', () => {
    expect(
      explain(season([lot('S1'), lot('S2', { item: 'ASIN@tall-1l', plantByOn: '2027-05-20' })], [line('D1')])),
    ).toMatchObject([{ supply: 'S1', reason: 'asked-for', instead: 'S2', sooner: [] }]);
  });

  it('because all else is promised, and tells to whom what must leave sooner goes', () => {
    const instance = season(
      [lot('S1'), lot('S2', { plantByOn: '2027-05-15' })],
      [line('D0', { on: '2027-05-14' }), line('D1', { rank: 2 })],
    );
    expect(explain(instance)).toHaveLength(1);
    expect(explain(instance)).toMatchObject([{ reason: 'rest-is-promised', instead: null }]);
    expect(
      explainAssignments(instance, 'D1', [
        { supply: 'S2', demand: 'D0', units: 10 },
        { supply: 'S1', demand: 'D1', units: 10 },
      ]),
    ).toEqual([
      {
        supply: 'S1',
        units: 10,
        reason: 'rest-is-promised',
        instead: null,
        sooner: [{ supply: 'S2', demands: ['D0'] }],
      },
    ]);
  });

  it('though something free would do as well', () => {
    expect(explain(season([lot('S1'), lot('S2')], [line('D1')]))).toMatchObject([
      { supply: 'S1', reason: 'as-good', instead: 'S2' },
    ]);
  });

  it('of which an unknown line has none', () => {
    expect(() => explain(season([], []), 'D9')).toThrow(InputError);
  });
});
