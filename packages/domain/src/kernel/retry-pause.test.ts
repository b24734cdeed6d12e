import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { retryPauseMs } from './retry-pause.ts';

const bounds = { firstMs: 500, longestMs: 8000 };

describe('the pause before another try', () => {
  it('doubles up to the longest', () => {
    expect([1, 2, 3, 4, 5, 6, 2000].map((failures) => retryPauseMs({ failures, ...bounds, chance: 1 }))).toEqual([
      500, 1000, 2000, 4000, 8000, 8000, 8000,
    ]);
  });

  it('lies between half and the whole of that, by chance', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.double({ min: 0, max: 1, noNaN: true }), (failures, chance) => {
        const whole = retryPauseMs({ failures, ...bounds, chance: 1 });
        const pause = retryPauseMs({ failures, ...bounds, chance });
        expect(pause).toBeGreaterThanOrEqual(Math.floor(whole / 2));
        expect(pause).toBeLessThanOrEqual(whole);
      }),
    );
  });

  it('leaves at most fifteen tries to fifteen seconds even where chance is always least', () => {
    let at = 0;
    let tries = 0;
    for (let failures = 1; at <= 15_000; failures++) {
      tries += 1;
      at += retryPauseMs({ failures, ...bounds, chance: 0 });
    }
    expect(tries).toBeLessThanOrEqual(15);
  });

  it.each([
    { failures: 0, chance: 0 },
    { failures: Number.NaN, chance: 0 },
    { failures: 1, chance: 1.1 },
    { failures: 1, chance: Number.NaN },
  ])('refuses %o', (odd) => {
    expect(() => retryPauseMs({ ...bounds, ...odd })).toThrow(expect.objectContaining({ name: 'InputError' }));
  });
});
