import { describe, expect, it } from 'vitest';
import { meantRows, totalOf, unitsOf, type StagedRow } from './staged-rows.ts';

const row = (key: string, units: number): StagedRow => ({
  key,
  lineId: key,
  lotId: key,
  lotCode: key,
  scientificName: '',
  containerCode: '',
  bedName: null,
  units,
});
const rows = [row('a', 12), row('b', 5)];

describe('the rows of pulled plants that a form means', () => {
  it('are all of them as long as nobody typed anything', () => {
    expect(totalOf(meantRows(rows, {}, 'all'))).toBe(17);
  });

  it('are none in a form that begins empty', () => {
    expect(meantRows(rows, {}, 'none')).toEqual([]);
  });

  it('leave out what was emptied or set to none', () => {
    expect(meantRows(rows, { a: null }, 'all').map(({ row: { key } }) => key)).toEqual(['b']);
    expect(meantRows(rows, { a: 3, b: 0 }, 'all')).toEqual([{ row: rows[0], units: 3 }]);
  });

  it('keep what cannot be read, so that it is said and not swallowed', () => {
    const meant = meantRows(rows, { a: Number.NaN }, 'all');
    expect(meant).toHaveLength(2);
    expect(totalOf(meant)).toBe(5);
  });

  it('show an emptied field as empty', () => {
    expect(unitsOf(row('a', 12), { a: null }, 'all')).toBeNull();
  });
});
