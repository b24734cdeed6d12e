import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mediaVolume, seedGrams } from './amounts.ts';
import { cellOutcomes, cellsAndTrays, seedsPerCell } from './cells.ts';
import { degreeDays } from './degree-days.ts';
import { germinationCourse } from './germination-course.ts';
import { bulkForPure, pureLiveSeed } from './pure-live-seed.ts';
import { replicateTolerance, viabilityOf } from './viability.ts';

const inside = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('seed', () => {
  it('is alive also when it is hard or dormant', () => {
    expect(pureLiveSeed({ purity: 0.5, germination: 0.2, hard: 0.3, dormant: 0.4 })).toBeCloseTo(0.45, 15);
  });

  it('that was rounded to a hair above the whole counts as the whole', () => {
    expect(pureLiveSeed({ purity: 1, germination: 0.7, hard: 0.3, dormant: 1e-10 })).toBe(1);
  });

  it('of the bulk amount holds the pure amount that was asked for', () => {
    fc.assert(
      fc.property(inside, inside, fc.double({ min: 0, max: 1e6, noNaN: true }), (purity, germination, pureAmount) => {
        const bulk = bulkForPure({ purity, germination, pureAmount });
        return Math.abs(bulk * pureLiveSeed({ purity, germination }) - pureAmount) <= 1e-9 * pureAmount;
      }),
    );
  });

  it('is weighed with its chaff', () => {
    expect(seedGrams({ seeds: 1000, seedsPerGram: 250, purity: 0.8 })).toBe(5);
    expect(seedGrams({ seeds: 0, seedsPerGram: 250, purity: 0.8 })).toBe(0);
  });
});

describe('cells', () => {
  it('are filled by the fewest seeds that reach the target', () => {
    fc.assert(
      fc.property(inside, inside, (germination, targetFill) => {
        const seeds = seedsPerCell({ germination, targetFill });
        const filled = (n: number) => 1 - (1 - germination) ** n;
        return seeds !== null && filled(seeds) >= targetFill - 1e-9 && (seeds === 1 || filled(seeds - 1) < targetFill);
      }),
    );
  });

  it.each([
    [{ germination: 0, targetFill: 0.9 }, null],
    [{ germination: 0.9, targetFill: 1 }, null],
    [{ germination: 1, targetFill: 1 }, 1],
    [{ germination: 0.3, targetFill: 0 }, 0],
    [{ germination: 0.9, targetFill: 0.99 }, 2],
    [{ germination: 0.9, targetFill: 0.999 }, 3],
    [{ germination: 1e-9, targetFill: 0.5 }, 693_147_181],
  ])('%j take %j seeds', (input, seeds) => {
    expect(seedsPerCell(input)).toBe(seeds);
  });

  it('are empty, single or multiple, all together as many as there are', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(12), fc.nat(1000), (germination, seeds, cells) => {
        const { empty, single, multiple } = cellOutcomes({ germination, seedsPerCell: seeds, cells });
        return Math.min(empty, single, multiple) >= 0 && Math.abs(empty + single + multiple - cells) < 1e-9;
      }),
    );
  });

  it('fill whole trays', () => {
    expect(cellsAndTrays({ cells: 145, cellsPerTray: 72 })).toEqual({ cells: 145, trays: 3, spareCells: 71 });
    expect(cellsAndTrays({ cells: 144, cellsPerTray: 72 })).toEqual({ cells: 144, trays: 2, spareCells: 0 });
    expect(cellsAndTrays({ cells: 0, cellsPerTray: 72 })).toEqual({ cells: 0, trays: 0, spareCells: 0 });
  });

  it('take more loose medium than they hold, since it packs down', () => {
    expect(mediaVolume({ units: 100, containerMl: 1000, settle: 0.2 })).toBe(125);
    expect(mediaVolume({ units: 288, containerMl: 20, settle: 0 })).toBeCloseTo(5.76, 12);
  });
});

describe('viability', () => {
  it('disagrees where the range passes the tolerance, not where it reaches it', () => {
    expect(viabilityOf([70, 80, 84, 86])).toEqual({
      meanPercent: 80,
      rangePercent: 16,
      tolerancePercent: 16,
      repeat: false,
    });
    expect(viabilityOf([69, 80, 85, 86])).toEqual({
      meanPercent: 80,
      rangePercent: 17,
      tolerancePercent: 16,
      repeat: true,
    });
  });

  it('is not judged for three replicates, which no table covers', () => {
    expect(viabilityOf([10, 50, 90])).toEqual({
      meanPercent: 50,
      rangePercent: 80,
      tolerancePercent: null,
      repeat: null,
    });
  });

  it('near 0 and 100 agrees, as its range could not pass the nearest printed figure', () => {
    expect(viabilityOf([100, 100, 100, 98])).toMatchObject({ tolerancePercent: null, repeat: false });
    for (let other = 90; other <= 100; other += 1) {
      const { meanPercent, tolerancePercent, rangePercent } = viabilityOf([100, other]);
      if (meanPercent >= 97.5) expect([tolerancePercent, rangePercent <= 6]).toEqual([null, true]);
    }
  });

  it('refuses numbers of replicates for which no range is printed, and means that are none', () => {
    expect(() => replicateTolerance({ meanPercent: 80, replicates: 3 })).toThrow(/^replicates: must be 4 or 2/);
    expect(() => replicateTolerance({ meanPercent: 101, replicates: 4 })).toThrow(/^meanPercent: /);
    expect(() => replicateTolerance({ meanPercent: Number.NaN, replicates: 4 })).toThrow(/^meanPercent: /);
    expect(() => viabilityOf([])).toThrow(/^replicates: /);
    expect(() => viabilityOf([99, 101])).toThrow(/^replicates: /);
  });
});

describe('a germination course', () => {
  it('has no times where nothing germinated', () => {
    expect(germinationCourse([0, 0, 0], 50)).toEqual({
      percentage: 0,
      meanTimeDays: null,
      t50Coolbear: null,
      t50Farooq: null,
      speed: 0,
    });
    expect(germinationCourse([], 50).percentage).toBe(0);
  });

  it('of one seed is over on its day', () => {
    expect(germinationCourse([0, 0, 1], 2)).toEqual({
      percentage: 50,
      meanTimeDays: 3,
      t50Coolbear: 3,
      t50Farooq: 2.5,
      speed: 1 / 3,
    });
  });

  it('has both t50 between the first and the last day on which something came up', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(20), { minLength: 1, maxLength: 30 }), (dailyCounts) => {
        const { meanTimeDays, t50Coolbear, t50Farooq } = germinationCourse(dailyCounts, 1000);
        if (meanTimeDays === null || t50Coolbear === null || t50Farooq === null)
          return dailyCounts.every((count) => count === 0);
        const first = dailyCounts.findIndex((count) => count > 0);
        return (
          t50Farooq >= first &&
          t50Farooq <= t50Coolbear &&
          t50Coolbear <= dailyCounts.length &&
          meanTimeDays >= first + 1
        );
      }),
    );
  });

  it('cannot hold more than was sown', () => {
    expect(() => germinationCourse([3, 3], 5)).toThrow(/^dailyCounts: /);
    expect(() => germinationCourse([1.5], 5)).toThrow(/^dailyCounts: /);
    expect(() => germinationCourse([1], 0)).toThrow(/^sown: /);
  });
});

describe('degree days', () => {
  it('are never negative and never above what base and limit leave', () => {
    const temperature = fc.double({ min: -30, max: 50, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, (a, b) => {
        const days = degreeDays({ maxC: Math.max(a, b), minC: Math.min(a, b), baseC: 10, upperC: 30 });
        return days >= 0 && days <= 20;
      }),
    );
  });

  it('have no upper limit unless one is given', () => {
    expect(degreeDays({ maxC: 45, minC: 25, baseC: 10 })).toBe(25);
  });
});

describe('what cannot be', () => {
  it.each([
    [() => pureLiveSeed({ purity: 85, germination: 0.5 }), 'purity'],
    [() => pureLiveSeed({ purity: 0.85, germination: 0.7, dormant: 0.4 }), 'germination'],
    [() => pureLiveSeed({ purity: 0.85, germination: 0.7, hard: -0.1 }), 'hard'],
    [() => bulkForPure({ purity: 0, germination: 0.5, pureAmount: 1 }), 'purity'],
    [() => bulkForPure({ purity: 0.5, germination: 0, pureAmount: 1 }), 'germination'],
    [() => bulkForPure({ purity: 0.5, germination: 0.5, pureAmount: -1 }), 'pureAmount'],
    [() => seedsPerCell({ germination: Number.NaN, targetFill: 0.9 }), 'germination'],
    [() => seedsPerCell({ germination: 0.5, targetFill: 90 }), 'targetFill'],
    [() => cellOutcomes({ germination: 0.5, seedsPerCell: 1.5, cells: 10 }), 'seedsPerCell'],
    [() => cellOutcomes({ germination: 0.5, seedsPerCell: 1, cells: -1 }), 'cells'],
    [() => cellsAndTrays({ cells: 10, cellsPerTray: 0 }), 'cellsPerTray'],
    [() => seedGrams({ seeds: 10, seedsPerGram: 0, purity: 1 }), 'seedsPerGram'],
    [() => seedGrams({ seeds: 10, seedsPerGram: 10, purity: 0 }), 'purity'],
    [() => seedGrams({ seeds: 0.5, seedsPerGram: 10, purity: 1 }), 'seeds'],
    [() => mediaVolume({ units: 10, containerMl: 10, settle: 1 }), 'settle'],
    [() => mediaVolume({ units: -10, containerMl: 10, settle: 0 }), 'units'],
    [() => degreeDays({ maxC: 10, minC: 11, baseC: 10 }), 'minC'],
    [() => degreeDays({ maxC: 10, minC: 1, baseC: 10, upperC: 10 }), 'upperC'],
    [() => degreeDays({ maxC: Number.NaN, minC: 1, baseC: 10 }), 'maxC'],
  ])('is refused by name: %s', (call, argument) => {
    expect(call).toThrow(expect.objectContaining({ name: 'InputError', argument }));
  });
});
