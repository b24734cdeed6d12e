import { describe, expect, it } from 'vitest';
import type { AllocationInstance } from './instance/instance.ts';
import { promise } from './promise.ts';

const lot = {
  id: 'S1',
  item: 'ASTU@tall-1l',
  units: 40,
  readyOn: '2027-04-01',
  plantByOn: '2027-06-15',
  unitValue: 650,
};
const line = { id: 'D1', rank: 1, on: '2027-05-12', units: 30, accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }] };
const instance: AllocationInstance = { today: '2027-04-20', horizonOn: '2027-10-31', supply: [lot], demand: [line] };
const ask = { accepts: [{ item: 'ASTU@tall-1l', penalty: 0 }], units: 10, on: '2027-05-20' };

describe('a promise', () => {
  it('can be given from what nobody needs', () => {
    expect(promise(instance, ask)).toEqual({
      units: 10,
      firstOn: '2027-05-20',
      lastBeforeOn: null,
      from: [{ supply: 'S1', units: 10 }],
      inTheWay: {
        unservedUnits: { refused: 0, 'not-ready': 0, 'past-plant-by': 0 },
        promisedToOthers: [{ demand: 'D1', units: 30 }],
        promisedToOthersUnits: 30,
      },
    });
  });

  it('can be given for as much as leaves every line what it has', () => {
    expect(promise(instance, { ...ask, units: 25 })).toMatchObject({ units: 10, firstOn: null });
  });

  it('can be given from plants of an earlier line that may have others', () => {
    const other = { ...lot, id: 'S2', units: 30, plantByOn: '2027-05-15' };
    expect(promise({ ...instance, supply: [lot, other] }, { ...ask, units: 40 })).toMatchObject({
      units: 40,
      from: [{ supply: 'S1', units: 40 }],
    });
  });

  it('tells the first day on which all of it can be met', () => {
    const growing = { ...lot, id: 'B1', units: 20, readyOn: '2027-06-03', plantByOn: null };
    const answer = promise({ ...instance, supply: [lot, growing] }, { ...ask, units: 25 });
    expect(answer).toMatchObject({
      units: 10,
      firstOn: '2027-06-03',
      inTheWay: { unservedUnits: { 'not-ready': 20 } },
    });
  });

  it('tells no day on which plants that serve now would be past their pot life', () => {
    const growing = { ...lot, id: 'B1', units: 20, readyOn: '2027-07-01', plantByOn: null };
    expect(promise({ ...instance, supply: [lot, growing] }, { ...ask, units: 25 }).firstOn).toBeNull();
  });

  it('tells the last day before on which plants may still leave', () => {
    const leaving = { ...lot, id: 'S2', units: 20, plantByOn: '2027-05-18' };
    expect(promise({ ...instance, supply: [lot, leaving] }, { ...ask, units: 40 })).toMatchObject({
      units: 30,
      firstOn: null,
      lastBeforeOn: null,
    });
    expect(promise({ ...instance, supply: [lot, leaving] }, { ...ask, units: 30, on: '2027-06-20' })).toMatchObject({
      units: 0,
      firstOn: null,
      lastBeforeOn: '2027-06-15',
    });
  });

  it('counts what has to leave earlier for this line by its own day', () => {
    const leaveBy = new Map([['S1', '2027-05-19']]);
    expect(promise(instance, { ...ask, leaveBy })).toMatchObject({
      units: 0,
      from: [],
      firstOn: null,
      lastBeforeOn: '2027-05-19',
    });
  });

  it('leaves refused plants out', () => {
    expect(promise(instance, { ...ask, refuses: ['S1'] })).toMatchObject({
      units: 0,
      from: [],
      inTheWay: { unservedUnits: { refused: 40 } },
    });
  });

  it('leaves pinned plants where they are', () => {
    const pinned = {
      ...instance,
      current: [{ supply: 'S1', demand: 'D1', units: 30, pinned: true }],
      supply: [lot, { ...lot, id: 'S2', readyOn: '2027-05-12', plantByOn: '2027-05-15' }],
    };
    expect(promise(pinned, { ...ask, units: 40 }).units).toBe(10);
  });

  it.each([
    ['ask.units', { units: 0 }],
    ['ask.on', { on: '2027-02-30' }],
    ['ask.accepts.penalty', { accepts: [{ item: 'ASTU@tall-1l', penalty: -1 }] }],
  ])('is refused for a bad %s', (argument, change) => {
    expect(() => promise(instance, { ...ask, ...change })).toThrow(
      expect.objectContaining({ name: 'InputError', argument }),
    );
  });
});
