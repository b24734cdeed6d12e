import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { pairCounts as pairItems } from './pairing.ts';

// Counts stand for themselves, so that a test can name each by its position.
const items = (units: readonly number[]) => units.map((n, at) => ({ units: n, at }));
const pairCounts = (leaving: readonly number[], arriving: readonly number[]) =>
  pairItems(items(leaving), items(arriving)).map((pair) => ({ ...pair, from: pair.from.at, to: pair.to.at }));

const counts = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 6 });
const total = (units: readonly number[]) => units.reduce((sum, n) => sum + n, 0);

describe('pairing what leaves with what arrives', () => {
  test('equal sums are matched unit by unit in order', () => {
    expect(pairCounts([12, 8], [15, 5])).toEqual([
      { from: 0, to: 0, fromUnits: 12, toUnits: 12 },
      { from: 1, to: 0, fromUnits: 3, toUnits: 3 },
      { from: 1, to: 1, fromUnits: 5, toUnits: 5 },
    ]);
  });

  test('a plant cut in three is one unit on one side and three on the other', () => {
    expect(pairCounts([10], [30])).toEqual([{ from: 0, to: 0, fromUnits: 10, toUnits: 30 }]);
  });

  test('three plugs in a pot from two benches keep both sums', () => {
    expect(pairCounts([20, 10], [10])).toEqual([
      { from: 0, to: 0, fromUnits: 20, toUnits: 7 },
      { from: 1, to: 0, fromUnits: 10, toUnits: 3 },
    ]);
  });

  test('each side keeps its own counts', () => {
    fc.assert(
      fc.property(counts, counts, (leaving, arriving) => {
        const pairs = pairCounts(leaving, arriving);
        expect(leaving.map((_, i) => total(pairs.filter((p) => p.from === i).map((p) => p.fromUnits)))).toEqual(
          leaving,
        );
        expect(arriving.map((_, i) => total(pairs.filter((p) => p.to === i).map((p) => p.toUnits)))).toEqual(arriving);
      }),
    );
  });

  test('equal sums give equal counts in every pair', () => {
    fc.assert(
      fc.property(counts, counts, (leaving, shape) => {
        const rest = total(leaving);
        const arriving = shape.reduce<number[]>(
          (cut, units) => (total(cut) + units < rest ? [...cut, units] : cut),
          [],
        );
        const filled = [...arriving, rest - total(arriving)];
        for (const pair of pairCounts(leaving, filled)) expect(pair.fromUnits).toBe(pair.toUnits);
      }),
    );
  });

  test.each([
    [[], [1]],
    [[1], []],
    [[0], [1]],
    [[1.5], [1]],
    [[1], [-1]],
  ])('%j with %j is refused', (leaving, arriving) => {
    expect(() => pairCounts(leaving, arriving)).toThrow(InputError);
  });
});
