import { describe, expect, it } from 'vitest';
import { reckonSowing, type SowingAsked } from './reckon-sowing.ts';

const asked = (fields: Partial<SowingAsked> = {}): SowingAsked => ({
  cells: 72,
  targetFill: 0.95,
  germination: 0.9,
  hard: null,
  dormant: null,
  purity: null,
  seedsPerGram: null,
  gramsLeft: null,
  ...fields,
});
const reckoned = (fields: Partial<SowingAsked> = {}) => {
  const answer = reckonSowing(asked(fields));
  if (typeof answer === 'string') throw new Error(`not reckoned: ${answer}`);
  return answer;
};

describe('a sowing', () => {
  // Binomial: 72 cells at 90 %, two seeds each, leave 0.72 empty (shared check values).
  it('needs two seeds in each of 72 cells at 90 % for 95 % of them', () => {
    const { seedsPerCell, seeds, outcomes } = reckoned();
    expect([seedsPerCell, seeds, Number(outcomes.empty.toFixed(2))]).toEqual([2, 144, 0.72]);
  });

  it('weighs its seed with the chaff that lies in it', () => {
    expect(reckoned({ seedsPerGram: 150, purity: 0.8 }).grams).toBeCloseTo(1.2, 12);
  });

  it('takes seed as pure where its purity is not known, and claims no pure live seed', () => {
    const { grams, pureLive } = reckoned({ seedsPerGram: 144 });
    expect([grams, pureLive]).toEqual([1, null]);
  });

  it('says how many cells the store is enough for', () => {
    expect(reckoned({ seedsPerGram: 144, gramsLeft: 0.5 }).cellsInStore).toBe(36);
    expect(reckoned({ seedsPerGram: 144, gramsLeft: 1 }).cellsInStore).toBeNull();
  });

  // Texas Department of Transportation, pure live seed page: 85 % × 75 % = 0.6375, 1.56 lb for 1 lb.
  it('keeps pure live seed apart from what fills cells', () => {
    const { pureLive } = reckoned({ germination: 0.5, hard: 0.15, dormant: 0.1, purity: 0.85 });
    expect(pureLive?.share).toBeCloseTo(0.6375, 12);
    expect(pureLive?.bulkOfOne).toBeCloseTo(1.5686, 4);
  });

  it.each([
    { cells: null },
    { cells: 0 },
    { cells: 2.5 },
    { cells: Number.NaN },
    { germination: null },
    { germination: 1.2 },
    { targetFill: 0 },
    { purity: -0.1 },
  ])('is not reckoned from %j', (fields) => {
    expect(reckonSowing(asked(fields))).toBe('incomplete');
  });

  it.each([{ germination: 0 }, { targetFill: 1 }])('never fills so many cells from %j', (fields) => {
    expect(reckonSowing(asked(fields))).toBe('never');
  });
});
