import { describe, expect, it } from 'vitest';
import { nameOf, typedFacts } from './entry-words.ts';

describe('a kept entry in words', () => {
  it('goes by the title its screen gave it', () => {
    expect(nameOf({ name: 'stock.loseFromLot', title: 'Lost: 12 of ASTU-26-004' })).toBe('Lost: 12 of ASTU-26-004');
  });

  it('spells out the command where it has no title', () => {
    expect(nameOf({ name: 'stock.loseFromLot', title: '' })).toBe('Lose from lot');
  });

  it('shows what was typed and leaves out ids and what is empty', () => {
    const body = {
      lotId: '6a1c7f0e-3f6d-4a55-9a52-0d8f3f6f9b11',
      units: 12,
      note: '',
      happenedOn: '2026-04-14',
      lines: [{ plantedUnits: 3 }],
    };
    expect(typedFacts(body)).toEqual([
      { term: 'units', value: '12' },
      { term: 'happened on', value: '2026-04-14' },
      { term: 'lines 1 planted units', value: '3' },
    ]);
  });
});
