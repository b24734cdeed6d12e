import { describe, expect, it } from 'vitest';
import { potShare } from './pot-share.ts';

describe('how far pot life has passed', () => {
  it('is half when half its days are gone', () => {
    expect(potShare('2026-01-01', '2026-01-31', '2026-01-16')).toBe(0.5);
  });
  it('is whole on the plant-by day and after', () => {
    expect([
      potShare('2026-01-01', '2026-01-31', '2026-01-31'),
      potShare('2026-01-01', '2026-01-31', '2026-03-01'),
    ]).toEqual([1, 1]);
  });
  it('is nothing without a day to leave by or a day it began', () => {
    expect([potShare('2026-01-01', null, '2026-01-16'), potShare(null, '2026-01-31', '2026-01-16')]).toEqual([
      null,
      null,
    ]);
  });
});
