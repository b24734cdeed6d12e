import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { explainShortage } from './explain-shortage.ts';
import type { AllocationInstance } from './instance/instance.ts';
import { supplyServes } from './instance/supply-serves.ts';
import { judgeLot } from './judge-lot.ts';

const lot = {
  id: 'S1',
  item: 'ASTU@tall-1l',
  units: 40,
  readyOn: '2027-05-12',
  plantByOn: '2027-05-12',
  unitValue: 650,
};
const line = { id: 'D1', rank: 2, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 1 }] };

describe('a supply', () => {
  it('serves on its ready day and on its plant-by day', () => {
    expect(supplyServes(lot, line)).toEqual({ serves: true, penalty: 1 });
    expect(supplyServes({ ...lot, plantByOn: null }, line).serves).toBe(true);
  });

  it.each([
    ['not-accepted', { ...lot, item: 'ASIN@tall-1l' }],
    ['refused', { ...lot, id: 'S7' }],
    ['not-ready', { ...lot, readyOn: '2027-05-13', plantByOn: null }],
    ['past-plant-by', { ...lot, readyOn: '2027-05-01', plantByOn: '2027-05-11' }],
  ] as const)('does not serve when it is %s', (reason, supply) => {
    expect(supplyServes(supply, { ...line, refuses: ['S7'] })).toEqual({ serves: false, reason });
  });
});

describe('a shortage', () => {
  const instance: AllocationInstance = {
    today: '2027-04-20',
    horizonOn: '2027-10-31',
    supply: [
      { ...lot, units: 50 },
      { ...lot, id: 'S2', units: 7, readyOn: '2027-06-01', plantByOn: null },
      { ...lot, id: 'S3', units: 5, readyOn: '2027-04-01', plantByOn: '2027-05-01' },
      { ...lot, id: 'S4', units: 3 },
      { ...lot, id: 'S5', units: 99, item: 'LIAS@plug' },
    ],
    demand: [
      { ...line, refuses: ['S4'] },
      { ...line, id: 'D0', rank: 1, units: 35 },
      { ...line, id: 'D9', rank: 1, units: 8 },
    ],
  };

  it('is explained in numbers', () => {
    expect(explainShortage(instance, 'D1')).toEqual({
      demand: 'D1',
      wantedUnits: 30,
      filledUnits: 10,
      shortUnits: 20,
      unservedUnits: { refused: 3, 'not-ready': 7, 'past-plant-by': 5 },
      promisedToOthers: [
        { demand: 'D0', units: 35 },
        { demand: 'D9', units: 5 },
      ],
      promisedToOthersUnits: 40,
      freeUnits: 0,
    });
  });

  it('does not count as out of reach what is pinned to the line all the same', () => {
    const assignments = [{ supply: 'S3', demand: 'D1', units: 4 }];
    const { filledUnits, unservedUnits } = explainShortage(instance, 'D1', { assignments });
    expect(filledUnits).toBe(4);
    expect(unservedUnits['past-plant-by']).toBe(1);
  });

  it('of an unknown line is refused', () => {
    expect(() => explainShortage(instance, 'D7')).toThrow(InputError);
  });
});

describe('a lot is judged', () => {
  const facts = { provenanceZone: 'zone-3', wildType: true, treated: false, held: false };

  it('fit when it has what is asked, or nothing is asked', () => {
    expect(judgeLot(facts, { provenanceZones: ['zone-2', 'zone-3'], wildTypeOnly: true, untreatedOnly: true })).toEqual(
      [],
    );
    expect(judgeLot({ provenanceZone: null, wildType: null, treated: null, held: false }, {})).toEqual([]);
  });

  it.each([
    ['held', { held: true }],
    ['provenance-zone', { provenanceZone: 'zone-9' }],
    ['provenance-unknown', { provenanceZone: null }],
    ['not-wild-type', { wildType: false }],
    ['wild-type-unknown', { wildType: null }],
    ['treated', { treated: true }],
    ['treatment-unknown', { treated: null }],
  ] as const)('unfit as %s', (reason, change) => {
    const conditions = { provenanceZones: ['zone-3'], wildTypeOnly: true, untreatedOnly: true };
    expect(judgeLot({ ...facts, ...change }, conditions)).toEqual([reason]);
  });

  it.each([
    ['fit when it is native to the region', ['IA', 'WI'], 'IA', []],
    ['unfit when it is native to another region only', ['WI'], 'IA', ['not-native']],
    ['unfit when nobody knows where it is native', [], 'IA', ['not-native']],
    ['unfit where the site has no region', ['IA'], null, ['not-native']],
  ] as const)('for natives, %s', (_, nativeRegions, region, reasons) => {
    expect(judgeLot({ ...facts, nativeRegions }, { nativesOnly: true, region })).toEqual(reasons);
    expect(judgeLot({ ...facts, nativeRegions }, { region })).toEqual([]);
  });

  it('for all reasons at once', () => {
    expect(
      judgeLot(
        { provenanceZone: 'zone-9', wildType: false, treated: true, held: true },
        { provenanceZones: ['zone-3'], untreatedOnly: true },
      ),
    ).toEqual(['held', 'provenance-zone', 'treated']);
  });
});
