import { describe, expect, it } from 'vitest';
import { shownDegrees, shownDepth, storedDegrees, storedDepth } from './shown.ts';

describe('a measure that is shown in US units', () => {
  it('goes back as it was when nobody touched it', () => {
    for (const celsius of [0.5, 1, 2, 3.3, 4, 18, 21, 33])
      expect(storedDegrees(shownDegrees(celsius, true), true)).toBe(celsius);
    for (const mm of [0, 1, 2, 6, 20, 30]) expect(storedDepth(shownDepth(mm, true), true)).toBe(mm);
  });
  it('is stored in Celsius and millimetres when it was typed', () => {
    expect(storedDegrees({ shown: 68, stored: 18 }, true)).toBe(20);
    expect(storedDepth({ shown: 0.5, stored: null }, true)).toBe(13);
  });
  it('may be cleared, and nonsense stays nonsense', () => {
    expect(storedDegrees({ shown: null, stored: 18 }, true)).toBeNull();
    expect(storedDegrees({ shown: Number.NaN, stored: 18 }, true)).toBeNaN();
  });
});

describe('a measure that is shown as it is stored', () => {
  it('is what was typed', () => {
    expect([storedDegrees({ shown: 18.5, stored: 18 }, false), storedDepth({ shown: 4, stored: 2 }, false)]).toEqual([
      18.5, 4,
    ]);
  });
});
