import { describe, expect, it } from 'vitest';
import { allocate } from './allocate.ts';
import type { AllocationDemand, AllocationInstance, AllocationSupply } from './instance/instance.ts';

const lot = (id: string, more: Partial<AllocationSupply> = {}): AllocationSupply => ({
  id,
  item: 'ASTU@tall-1l',
  units: 40,
  readyOn: '2027-04-01',
  plantByOn: '2027-06-15',
  unitValue: 650,
  ...more,
});
const line = (id: string, more: Partial<AllocationDemand> = {}): AllocationDemand => ({
  id,
  rank: 1,
  on: '2027-05-12',
  units: 30,
  accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }],
  ...more,
});
const season = (supply: AllocationSupply[], demand: AllocationDemand[], current: AllocationInstance['current'] = []) =>
  allocate({ today: '2027-04-20', horizonOn: '2027-10-31', supply, demand, current });

describe('allocation', () => {
  it('gives a line what it asks for and counts what is left to decline', () => {
    expect(season([lot('S1')], [line('D1')])).toEqual({
      assignments: [{ supply: 'S1', demand: 'D1', units: 30 }],
      short: [],
      declining: [{ supply: 'S1', units: 10 }],
      totals: { filled: 30, penalty: 0, savedValue: 19_500, moved: 0 },
    });
  });

  it('lets the plants go first that must leave their pots first', () => {
    const lots = [
      lot('never', { plantByOn: null }),
      lot('late', { plantByOn: '2027-10-15' }),
      lot('soon', { plantByOn: '2027-05-12' }),
    ];
    expect(season(lots, [line('D1', { units: 90 })]).assignments).toEqual([
      { supply: 'late', demand: 'D1', units: 40 },
      { supply: 'never', demand: 'D1', units: 10 },
      { supply: 'soon', demand: 'D1', units: 40 },
    ]);
  });

  it('prefers what was asked for to a substitute that leaves sooner', () => {
    const lots = [lot('asked', { plantByOn: null }), lot('other', { item: 'ASIN@tall-1l', plantByOn: '2027-05-20' })];
    const accepts = [
      { item: 'ASIN@tall-1l', penalty: 2 },
      { item: 'ASTU@tall-1l', penalty: 0 },
    ];
    const answer = season(lots, [line('D1', { units: 50, accepts })]);
    expect(answer.assignments).toEqual([
      { supply: 'asked', demand: 'D1', units: 40 },
      { supply: 'other', demand: 'D1', units: 10 },
    ]);
    expect(answer.totals.penalty).toBe(20);
  });

  it('serves the lower rank first, whatever the days', () => {
    const answer = season([lot('S1')], [line('later', { rank: 2, on: '2027-05-01' }), line('first', { rank: 1 })]);
    expect(answer.short).toEqual([{ demand: 'later', units: 20 }]);
  });

  it('lets the order of ids decide between equal ranks when nothing else does', () => {
    const answer = season([lot('S1')], [line('b', { on: '2027-05-10' }), line('a', { on: '2027-05-20' })]);
    expect(answer.short).toEqual([{ demand: 'b', units: 20 }]);
  });

  it('gives an earlier line other plants, so that a later one gets the only ones that serve it', () => {
    const lots = [lot('any', { plantByOn: '2027-06-30' }), lot('early', { plantByOn: '2027-05-15' })];
    const answer = season(lots, [
      line('first', { on: '2027-05-12' }),
      line('second', { rank: 2, on: '2027-06-20', units: 40 }),
    ]);
    expect(answer.short).toEqual([]);
    expect(answer.assignments).toEqual([
      { supply: 'any', demand: 'second', units: 40 },
      { supply: 'early', demand: 'first', units: 30 },
    ]);
  });

  it('lets lines of one rank share what saves most', () => {
    const lots = [lot('S1', { units: 10, plantByOn: null }), lot('S2', { units: 10, unitValue: 900 })];
    const lines = [line('D1', { units: 10, refuses: ['S2'] }), line('D2', { units: 10 })];
    expect(season([lots[0]!, { ...lots[1]!, readyOn: '2027-05-12' }], lines).totals.savedValue).toBe(9000);
  });

  it('leaves a line with what it holds among equals, and gives it the rest from the first', () => {
    const current = [{ supply: 'S2', demand: 'D1', units: 10 }];
    const answer = season([lot('S1'), lot('S2')], [line('D1')], current);
    expect(answer.assignments).toEqual([
      { supply: 'S1', demand: 'D1', units: 20 },
      { supply: 'S2', demand: 'D1', units: 10 },
    ]);
    expect(answer.totals.moved).toBe(0);
  });

  it('leaves a line with what it holds of each of two equal lots', () => {
    const current = [
      { supply: 'S1', demand: 'D1', units: 10 },
      { supply: 'S2', demand: 'D1', units: 20 },
    ];
    expect(season([lot('S1'), lot('S2')], [line('D1')], current).assignments).toEqual(current);
  });

  it('counts what a line loses of what it held', () => {
    const current = [{ supply: 'S2', demand: 'D1', units: 30 }];
    const answer = season([lot('S1', { plantByOn: '2027-05-20' }), lot('S2')], [line('D1')], current);
    expect(answer.assignments).toEqual([{ supply: 'S1', demand: 'D1', units: 30 }]);
    expect(answer.totals.moved).toBe(30);
  });

  it('keeps pinned units even for a later rank', () => {
    const current = [{ supply: 'S1', demand: 'D2', units: 25, pinned: true }];
    const answer = season([lot('S1')], [line('D1', { on: '2027-04-25' }), line('D2', { rank: 2 })], current);
    expect(answer.assignments).toEqual([
      { supply: 'S1', demand: 'D1', units: 15 },
      { supply: 'S1', demand: 'D2', units: 25 },
    ]);
  });

  it('counts pinned and floating units of one pair together', () => {
    const current = [
      { supply: 'S1', demand: 'D1', units: 10, pinned: true },
      { supply: 'S1', demand: 'D1', units: 5 },
    ];
    const answer = season([lot('S1', { units: 12 })], [line('D1')], current);
    expect(answer.assignments).toEqual([{ supply: 'S1', demand: 'D1', units: 12 }]);
    expect(answer.totals.moved).toBe(3);
  });

  it('saves no value of plants that outlast the season', () => {
    const lots = [lot('S1', { plantByOn: '2027-11-01' }), lot('S2', { plantByOn: '2027-10-31', units: 5 })];
    const answer = season(lots, [line('D1', { units: 20 })]);
    expect(answer.totals.savedValue).toBe(5 * 650);
    expect(answer.declining).toEqual([]);
  });

  it('has nothing to do for an empty nursery', () => {
    expect(season([], []).totals).toEqual({ filled: 0, penalty: 0, savedValue: 0, moved: 0 });
  });
});
