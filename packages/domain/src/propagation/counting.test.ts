import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedAlive, missingAt } from './counting.ts';
import { yieldLeft } from './forecast.ts';
import { cellsOfTrays } from './words.ts';

const nothing = { pottedUnits: 0, pottedPlants: 0, failedUnits: 0, lostUnits: 0 };

describe('a count of a batch', () => {
  it('misses nothing the first time', () => {
    expect(missingAt(40, { unit: 'cell', lastCounted: null, since: nothing, standingUnits: 100 })).toBe(0);
  });
  it('misses what the last count saw and this one does not', () => {
    expect(missingAt(52, { unit: 'cell', lastCounted: 60, since: nothing, standingUnits: 100 })).toBe(8);
  });
  it('misses nothing that was potted since', () => {
    expect(
      missingAt(30, {
        unit: 'cell',
        lastCounted: 60,
        since: { ...nothing, pottedUnits: 30, pottedPlants: 34 },
        standingUnits: 70,
      }),
    ).toBe(0);
  });
  it('misses no plants with cells that were written off because nothing came up', () => {
    expect(
      missingAt(58, { unit: 'cell', lastCounted: 60, since: { ...nothing, failedUnits: 40 }, standingUnits: 60 }),
    ).toBe(2);
  });
  it('counts plants and not trays where a tray holds many', () => {
    expect(
      missingAt(100, {
        unit: 'tray',
        lastCounted: 200,
        since: { ...nothing, pottedUnits: 0, pottedPlants: 90 },
        standingUnits: 2,
      }),
    ).toBe(10);
  });
  it('gives a lost tray its share of the plants', () => {
    expect(
      expectedAlive({ unit: 'tray', lastCounted: 200, since: { ...nothing, lostUnits: 1 }, standingUnits: 3 }),
    ).toBe(150);
  });
  it('refuses a count below zero', () => {
    expect(() => missingAt(-1, { unit: 'cell', lastCounted: 3, since: nothing, standingUnits: 3 })).toThrow(
      /emergedUnits/,
    );
  });
  it('never misses more plants than cells stand', () => {
    const amount = fc.integer({ min: 0, max: 500 });
    fc.assert(
      fc.property(amount, amount, amount, amount, amount, (counted, last, pottedUnits, lostUnits, standingUnits) => {
        const missing = missingAt(counted, {
          unit: 'cell',
          lastCounted: last,
          since: { ...nothing, pottedUnits, lostUnits },
          standingUnits,
        });
        return missing >= 0 && missing <= standingUnits;
      }),
      { seed: 7 },
    );
  });
});

describe('the cautious yield', () => {
  it('falls by what was potted', () => {
    expect(yieldLeft({ unit: 'tray', expectedUnits: 80, pottedPlants: 30, standingUnits: 2 })).toBe(50);
  });
  it('is never more than the cells that stand', () => {
    expect(yieldLeft({ unit: 'cell', expectedUnits: 80, pottedPlants: 0, standingUnits: 60 })).toBe(60);
  });
  it('is nothing when nothing stands', () => {
    expect(yieldLeft({ unit: 'pack', expectedUnits: 80, pottedPlants: 10, standingUnits: 0 })).toBe(0);
  });
});

it('reckons the cells of whole trays', () => {
  expect(cellsOfTrays(4, 72)).toBe(288);
  expect(() => cellsOfTrays(0, 72)).toThrow(/trays/);
});
