import { describe, expect, it } from 'vitest';
import { demandOf, supplyOf } from './sample-facts.ts';
import { supplyOutlook } from './supply-outlook.ts';

const facts = {
  today: '2027-01-15',
  weeks: 8,
  demands: [
    demandOf({ on: '2027-02-03', units: 30 }),
    demandOf({ id: 'D2', kind: 'expected', rank: null, on: '2027-02-10', units: 20 }),
  ],
  supplies: [supplyOf({ units: 40, countedOn: '2027-01-15' })],
};
const rows = (more: Partial<typeof facts> = {}) =>
  supplyOutlook('P1@pot', { ...facts, ...more }).map(({ plants, orders, expected, short }) => [
    plants,
    orders,
    expected,
    short,
  ]);

describe('supply and demand by week', () => {
  it('shows what can go out before each week’s demand is met, and what is lacking', () => {
    expect(rows()).toEqual([
      [40, 0, 0, 0],
      [40, 0, 0, 0],
      [40, 0, 0, 0],
      [40, 30, 0, 0],
      [10, 0, 20, 10],
      [0, 0, 0, 0],
      [0, 0, 0, 0],
      [0, 0, 0, 0],
    ]);
  });
  it('begins with this week’s Monday', () => expect(supplyOutlook('P1@pot', facts)[0]?.startsOn).toBe('2027-01-11'));
  it('shows nothing of plants that are not ready yet', () => {
    expect(
      rows({ supplies: [supplyOf({ units: 40, countedOn: '2027-01-15', readyOn: '2027-02-02' })] }).map(
        ([plants]) => plants,
      ),
    ).toEqual([0, 0, 0, 40, 10, 0, 0, 0]);
  });
  it('shows nothing of plants that had to be planted before', () => {
    expect(rows({ demands: [], supplies: [supplyOf({ plantByOn: '2027-01-26' })] }).map(([plants]) => plants)).toEqual([
      40, 40, 40, 0, 0, 0, 0, 0,
    ]);
  });
  it('shows fewer plants as they are expected to die', () => {
    const [first, , last] = supplyOutlook('P1@pot', {
      ...facts,
      demands: [],
      supplies: [supplyOf({ units: 100, countedOn: '2027-04-01', readyOn: '2027-04-01', lossRatePerDay: 0.01 })],
      today: '2027-04-01',
    });
    // 100 · exp(−0.01 · 3) and · exp(−0.01 · 17), from Thursday to the Sundays.
    expect([first?.plants, last?.plants]).toEqual([97, 84]);
  });
  it('does not show another item', () =>
    expect(
      supplyOutlook('P2@pot', facts).every(({ plants, orders, expected }) => plants + orders + expected === 0),
    ).toBe(true));
  it('refuses weeks that are none', () =>
    expect(() => supplyOutlook('P1@pot', { ...facts, weeks: 0 })).toThrow(
      expect.objectContaining({ argument: 'weeks' }),
    ));
});
