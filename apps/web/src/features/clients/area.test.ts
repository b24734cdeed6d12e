import { describe, expect, it } from 'vitest';
import { areaCm2, areaTyped } from './area.ts';

describe('the area of a bed', () => {
  it('comes back as it was typed, in either unit', () => {
    for (const typed of [0.5, 4, 12.25, 180]) {
      expect(areaTyped(areaCm2(typed, 'metric'), 'metric')).toBe(typed);
      expect(areaTyped(areaCm2(typed, 'us'), 'us')).toBe(typed);
    }
  });

  it('is kept in square centimetres', () => {
    expect(areaCm2(2, 'metric')).toBe(20_000);
    expect(areaCm2(100, 'us')).toBe(92_903);
  });

  it('stays unreadable when it could not be read', () => {
    expect(areaCm2(Number.NaN, 'us')).toBeNaN();
  });
});
