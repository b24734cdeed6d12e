import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from './edit-distance.ts';
import { nameKey } from './name-key.ts';

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 9 });

describe('edit distance', () => {
  it.each([
    ['liatris', 'liatris', 0],
    ['liatris', 'liatirs', 1],
    ['liatris', 'liatrs', 1],
    ['liatris', 'liatrris', 1],
    ['liatris', 'leatris', 1],
    ['carex', 'crax', 2],
    ['', 'abc', 3],
  ])('from %s to %s is %i', (a, b, distance) => {
    expect(editDistance(a, b, 5)).toBe(distance);
  });

  it('is the same both ways, and nothing only between equals', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        const there = editDistance(a, b, 20);
        expect(editDistance(b, a, 20)).toBe(there);
        expect(there === 0).toBe(a === b);
      }),
    );
  });

  it('beyond the bound is null, and within it what it is without one', () => {
    fc.assert(
      fc.property(word, word, fc.integer({ min: 0, max: 6 }), (a, b, most) => {
        const free = editDistance(a, b, 20) ?? Number.POSITIVE_INFINITY;
        expect(editDistance(a, b, most)).toBe(free <= most ? free : null);
      }),
    );
  });
});

describe('a name’s key', () => {
  it.each([
    ['  Bicknell’s   Sedge ', 'bicknells sedge'],
    ['Liatris ×gladewitchensis', 'liatris gladewitchensis'],
    ['Liatris x gladewitchensis', 'liatris gladewitchensis'],
    ['spotted Joe-Pye weed', 'spotted joe pye weed'],
    ['Á. Löve & D. Löve', 'a love d love'],
    ['Łąka', 'laka'],
    ['Straße Øre', 'strasse ore'],
    ["St. John's wort", 'st johns wort'],
    ['??', ''],
  ])('of %j is %j', (text, key) => {
    expect(nameKey(text)).toBe(key);
  });

  it('is its own key', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => nameKey(nameKey(text)) === nameKey(text)));
  });
});
