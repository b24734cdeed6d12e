import { describe, expect, it } from 'vitest';
import { besidesWholeTrays, inWholeTrays, plantsIn, traysIn } from './trays.ts';

describe('whole trays', () => {
  it('of 72 cells: 100 plants fill one, 143 still one, 144 two', () => {
    expect([71, 72, 100, 143, 144].map((plants) => traysIn(plants, 72))).toEqual([0, 1, 1, 1, 2]);
    expect(plantsIn(2, 72)).toBe(144);
    expect(inWholeTrays(100, 72)).toBe(72);
  });

  it('do not matter for plants in pots of their own', () => {
    expect([traysIn(7, null), plantsIn(7, null), inWholeTrays(7, null), besidesWholeTrays(7, null)]).toEqual([
      7,
      7,
      7,
      null,
    ]);
  });

  it('that a number of plants misses are named below and above it; below the first tray there is none', () => {
    expect(besidesWholeTrays(144, 72)).toBeNull();
    expect(besidesWholeTrays(100, 72)).toEqual({ cells: 72, below: 72, above: 144 });
    expect(besidesWholeTrays(30, 72)).toEqual({ cells: 72, below: null, above: 72 });
  });

  it('are never more plants than there are, and never leave a whole tray over', () => {
    for (const cells of [1, 6, 50, 72, 128]) {
      for (let plants = 0; plants <= 300; plants += 1) {
        const left = plants - inWholeTrays(plants, cells);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThan(cells);
      }
    }
  });
});
