import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { matchName, type NamedPlant } from './match-name.ts';

const plants: NamedPlant[] = [
  {
    id: 'tuberosa',
    scientificName: 'Asclepias tuberosa L.',
    vernacularNames: ['butterfly milkweed', 'butterfly weed'],
  },
  {
    id: 'curassavica',
    scientificName: 'Asclepias curassavica L.',
    vernacularNames: ['tropical milkweed', 'butterfly weed'],
  },
  {
    id: 'laeve',
    scientificName: 'Symphyotrichum laeve (L.) Á. Löve & D. Löve',
    synonyms: ['Aster laevis L.'],
    vernacularNames: ['smooth blue aster'],
  },
  { id: 'bicknellii', scientificName: 'Carex bicknellii Britton', vernacularNames: ['Bicknell’s sedge'] },
  {
    id: 'maculatum',
    scientificName: 'Eutrochium maculatum (L.) E.E. Lamont',
    synonyms: ['Eupatorium maculatum L.'],
    vernacularNames: ['spotted Joe-Pye weed'],
  },
];

describe('a written name', () => {
  it.each(['Asclepias tuberosa', 'asclepias TUBEROSA', ' Asclepias tuberosa L. ', 'Asclepias tuberosa Linnaeus'])(
    '%j is the accepted one',
    (text) => {
      expect(matchName(text, plants)).toEqual({ kind: 'exact', plantId: 'tuberosa' });
    },
  );

  // Kept without an author, so that only what is written carries one.
  it.each(['ASCLEPIAS tuberosa L.', 'asclepias tuberosa L.', 'ASCLEPIAS TUBEROSA L.', 'asclepias  tuberosa  Linnaeus'])(
    '%j is found whatever its letters, author and all',
    (text) => {
      expect(matchName(text, [{ id: 'tuberosa', scientificName: 'Asclepias tuberosa' }])).toEqual({
        kind: 'exact',
        plantId: 'tuberosa',
      });
    },
  );

  it('is found without the diacritics of its author', () => {
    expect(matchName('Symphyotrichum laeve (L.) A. Love & D. Love', plants)).toEqual({
      kind: 'exact',
      plantId: 'laeve',
    });
  });

  it('may be a synonym', () => {
    expect(matchName('Aster laevis', plants)).toEqual({ kind: 'synonym', plantId: 'laeve', name: 'Aster laevis L.' });
  });

  it.each(["bicknell's sedge", 'Bicknells Sedge', 'BICKNELL`S  SEDGE'])('%j is a common one', (text) => {
    expect(matchName(text, plants)).toEqual({ kind: 'common', plantId: 'bicknellii', name: 'Bicknell’s sedge' });
  });

  it('with or without hyphens is the same', () => {
    expect(matchName('spotted joe pye weed', plants)).toMatchObject({ kind: 'common', plantId: 'maculatum' });
  });

  it('of two plants is ambiguous, since only the scientific name settles it', () => {
    expect(matchName('Butterfly Weed', plants)).toEqual({ kind: 'ambiguous', plantIds: ['curassavica', 'tuberosa'] });
  });

  it('of a genus could mean all of it', () => {
    expect(matchName('Asclepias', plants)).toEqual({ kind: 'ambiguous', plantIds: ['curassavica', 'tuberosa'] });
    expect(matchName('Carex sp.', plants)).toEqual({ kind: 'ambiguous', plantIds: ['bicknellii'] });
  });

  it('that is one plant’s accepted name and another’s synonym means the first', () => {
    const split = [...plants, { id: 'narrow', scientificName: 'Carex stricta Lam.', synonyms: ['Carex bicknellii'] }];
    expect(matchName('Carex bicknellii', split)).toEqual({ kind: 'exact', plantId: 'bicknellii' });
  });

  it('that two plants have as a synonym is ambiguous', () => {
    const split = [...plants, { id: 'other', scientificName: 'Symphyotrichum concinnum', synonyms: ['Aster laevis'] }];
    expect(matchName('Aster laevis', split)).toEqual({ kind: 'ambiguous', plantIds: ['laeve', 'other'] });
  });

  it('misspelt is unknown, with what comes near, nearest first', () => {
    expect(matchName('Asclepias tubrosa', plants)).toEqual({
      kind: 'unknown',
      nearMisses: [{ plantId: 'tuberosa', name: 'Asclepias tuberosa L.', distance: 1 }],
    });
    expect(matchName('butterfly wed', plants)).toEqual({
      kind: 'unknown',
      nearMisses: [
        { plantId: 'curassavica', name: 'butterfly weed', distance: 1 },
        { plantId: 'tuberosa', name: 'butterfly weed', distance: 1 },
      ],
    });
  });

  it('far from all is unknown, with nothing near', () => {
    expect(matchName('dandelion', plants)).toEqual({ kind: 'unknown', nearMisses: [] });
    expect(matchName('??', plants)).toEqual({ kind: 'unknown', nearMisses: [] });
  });

  it('that is empty is refused', () => {
    expect(() => matchName('   ', plants)).toThrow(InputError);
  });

  it('means the same whatever the order of the plants', () => {
    const texts = fc.constantFrom(
      'butterfly weed',
      'Asclepias',
      'Asclepias tubrosa',
      'milkweed',
      'Aster laevis',
      'butterfly wed',
    );
    fc.assert(
      fc.property(fc.shuffledSubarray(plants, { minLength: plants.length }), texts, (shuffled, text) => {
        expect(matchName(text, shuffled)).toEqual(matchName(text, plants));
      }),
    );
  });

  it('with one letter wrong always has the right one among its near misses', () => {
    const name = 'Symphyotrichum laeve';
    fc.assert(
      fc.property(fc.integer({ min: 0, max: name.length - 1 }), fc.constantFrom('q', 'z', 'w'), (at, letter) => {
        const match = matchName(name.slice(0, at) + letter + name.slice(at + 1), plants);
        expect(match.kind === 'unknown' && match.nearMisses[0]?.plantId).toBe('laeve');
      }),
    );
  });
});
