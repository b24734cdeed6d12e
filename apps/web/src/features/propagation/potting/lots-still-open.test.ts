import { describe, expect, it } from 'vitest';
import { lotsStillOpen } from './lots-still-open.ts';

const lot = { pottedOn: '2026-05-10', closedOn: null };

describe('lots that plants may still be added to', () => {
  it('are open on their first day and for seven days after', () => {
    expect(
      ['2026-05-09', '2026-05-10', '2026-05-17', '2026-05-18'].map((on) => lotsStillOpen([lot], on).length),
    ).toEqual([0, 1, 1, 0]);
  });
  it('are not those of which nothing stands any more', () => {
    expect(lotsStillOpen([{ ...lot, closedOn: '2026-05-12' }], '2026-05-12')).toEqual([]);
  });
});
