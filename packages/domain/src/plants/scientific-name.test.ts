import { describe, expect, it } from 'vitest';
import { InputError } from '../kernel/input.ts';
import { plantCode } from './plant-code.ts';
import { parseScientificName } from './scientific-name.ts';

const WITH_AUTHOR_AND_CODE = [
  ['Asclepias tuberosa', 'L.', 'ASTU'],
  ['Asclepias incarnata', 'L.', 'ASIN'],
  ['Asclepias syriaca', 'L.', 'ASSY'],
  ['Asclepias verticillata', 'L.', 'ASVE'],
  ['Asclepias viridis', 'Walter', 'ASVI'],
  ['Asclepias exaltata', 'L.', 'ASEX'],
  ['Asclepias speciosa', 'Torr.', 'ASSP'],
  ['Baptisia alba', '(L.) Vent.', 'BAAL'],
  ['Baptisia australis', '(L.) R. Br.', 'BAAU'],
  ['Echinacea pallida', '(Nutt.) Nutt.', 'ECPA'],
  ['Echinacea purpurea', '(L.) Moench', 'ECPU'],
  ['Liatris aspera', 'Michx.', 'LIAS'],
  ['Liatris pycnostachya', 'Michx.', 'LIPY'],
  ['Lupinus perennis', 'L.', 'LUPE'],
  ['Silphium laciniatum', 'L.', 'SILA'],
  ['Silphium perfoliatum', 'L.', 'SIPE'],
  ['Monarda fistulosa', 'L.', 'MOFI'],
  ['Zizia aurea', '(L.) W.D.J. Koch', 'ZIAU'],
  ['Viola sororia', 'Willd.', 'VISO'],
  ['Viola pedata', 'L.', 'VIPE'],
  ['Ceanothus americanus', 'L.', 'CEAM'],
  ['Penstemon digitalis', 'Nutt. ex Sims', 'PEDI'],
  ['Solidago rigida', 'L.', 'SORI'],
  ['Solidago speciosa', 'Nutt.', 'SOSP'],
  ['Symphyotrichum novae-angliae', '(L.) G.L. Nesom', 'SYNO'],
  ['Symphyotrichum laeve', '(L.) A. Love & D. Love', 'SYLA'],
  ['Symphyotrichum oolentangiense', '(Riddell) G.L. Nesom', 'SYOO'],
  ['Eutrochium maculatum', '(L.) E.E. Lamont', 'EUMA'],
  ['Pycnanthemum virginianum', '(L.) T. Durand & B.D. Jacks. ex B.L. Rob. & Fernald', 'PYVI'],
  ['Rudbeckia hirta', 'L.', 'RUHI'],
  ['Schizachyrium scoparium', '(Michx.) Nash', 'SCSC'],
  ['Carex bicknellii', 'Britton', 'CABI'],
  ['Carex brevior', '(Dewey) Mack. ex Lunell', 'CABR'],
  ['Aristolochia macrophylla', 'Lam.', 'ARMA'],
] as const;

describe('a scientific name', () => {
  it.each(WITH_AUTHOR_AND_CODE)('%s is parted from its author %s', (name, author) => {
    const [genus, epithet] = name.split(' ');
    expect(parseScientificName(`${name} ${author}`)).toEqual({
      scientificName: name,
      scientificNameAuthorship: author,
      genus,
      specificEpithet: epithet,
      infraspecificEpithet: null,
      cultivarEpithet: null,
      taxonRank: 'species',
      hybrid: false,
    });
  });

  it('may stand without an author, and with careless blanks', () => {
    expect(parseScientificName('  Asclepias   tuberosa ')).toMatchObject({
      scientificName: 'Asclepias tuberosa',
      scientificNameAuthorship: '',
    });
  });

  it.each([
    [
      'Asclepias tuberosa L. subsp. interior Woodson',
      'Asclepias tuberosa subsp. interior',
      'subspecies',
      'interior',
      'Woodson',
    ],
    [
      'Baptisia alba (L.) Vent. var. macrophylla (Larisey) Isely',
      'Baptisia alba var. macrophylla',
      'variety',
      'macrophylla',
      '(Larisey) Isely',
    ],
    ['Baptisia alba var macrophylla', 'Baptisia alba var. macrophylla', 'variety', 'macrophylla', ''],
    [
      'Asclepias incarnata L. f. albiflora A. Heller',
      'Asclepias incarnata f. albiflora',
      'form',
      'albiflora',
      'A. Heller',
    ],
  ])(
    '%s has a rank below the species',
    (text, scientificName, taxonRank, infraspecificEpithet, scientificNameAuthorship) => {
      expect(parseScientificName(text)).toMatchObject({
        scientificName,
        taxonRank,
        infraspecificEpithet,
        scientificNameAuthorship,
      });
    },
  );

  it('does not take an author’s son for a form', () => {
    expect(parseScientificName('Aster laevis L. f. ex Aiton')).toMatchObject({
      taxonRank: 'species',
      scientificNameAuthorship: 'L. f. ex Aiton',
    });
  });

  it.each([
    ["Asclepias tuberosa 'Hello Yellow'", "Asclepias tuberosa 'Hello Yellow'", 'Hello Yellow'],
    ['Asclepias tuberosa L. ‘Hello Yellow’', "Asclepias tuberosa 'Hello Yellow'", 'Hello Yellow'],
    ["Echinacea 'Magnus'", "Echinacea 'Magnus'", 'Magnus'],
    ["Solidago rugosa 'Dutchman's Gold'", "Solidago rugosa 'Dutchman's Gold'", "Dutchman's Gold"],
  ])('%s carries a cultivar in single quotes', (text, scientificName, cultivarEpithet) => {
    expect(parseScientificName(text)).toMatchObject({
      scientificName,
      cultivarEpithet,
      taxonRank: 'cultivar',
      scientificNameAuthorship: '',
    });
  });

  it('keeps an apostrophe in an author’s name', () => {
    expect(parseScientificName("Physaria hemiphysaria O'Kane").scientificNameAuthorship).toBe("O'Kane");
  });

  it.each(['Liatris ×gladewitchensis', 'Liatris × gladewitchensis', 'Liatris x gladewitchensis'])(
    '%s is a hybrid',
    (text) => {
      expect(parseScientificName(text)).toMatchObject({
        scientificName: 'Liatris ×gladewitchensis',
        hybrid: true,
        taxonRank: 'species',
      });
    },
  );

  it('may be a genus alone', () => {
    expect(parseScientificName('Asclepias sp.')).toMatchObject({
      scientificName: 'Asclepias',
      taxonRank: 'genus',
      specificEpithet: null,
    });
    expect(parseScientificName('Asclepias L.')).toMatchObject({ taxonRank: 'genus', scientificNameAuthorship: 'L.' });
  });

  it.each(['', '  ', 'butterfly milkweed', '12', "'Magnus'", 'A. tuberosa'])('is not read into %j', (text) => {
    expect(() => parseScientificName(text)).toThrow(InputError);
  });
});

describe('a plant’s code', () => {
  it.each(WITH_AUTHOR_AND_CODE)('of %s %s is %s', (name, author, code) => {
    expect(plantCode(`${name} ${author}`)).toBe(code);
  });

  it('gets a letter when it is taken', () => {
    expect(plantCode('Asclepias tuberosa', new Set(['ASTU']))).toBe('ASTUA');
    expect(plantCode('Aster tuberosus', new Set(['ASTU', 'ASTUA']))).toBe('ASTUB');
  });

  it('of a genus alone ends in SP', () => {
    expect(plantCode('Carex sp.')).toBe('CASP');
  });

  it('is refused when all its letters are taken', () => {
    const taken = new Set(['ASTU', ...[...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `ASTU${letter}`)]);
    expect(() => plantCode('Asclepias tuberosa', taken)).toThrow(/^taken: /);
  });
});
