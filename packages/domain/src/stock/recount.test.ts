import { describe, expect, test } from 'vitest';
import { recount } from './recount.ts';

describe('a recount', () => {
  test('above the ledger books what was found', () => expect(recount(40, 43)).toEqual({ kind: 'found', units: 3 }));
  test('below it books what nobody can explain', () =>
    expect(recount(40, 37)).toEqual({ kind: 'unexplained', units: 3 }));
  test('that agrees moves nothing', () => expect(recount(40, 40)).toEqual({ kind: 'as-expected' }));
  test.each([-1, 1.5, Number.NaN])('of %s is refused', (counted) =>
    expect(() => recount(40, counted)).toThrow('countedUnits'),
  );
});
