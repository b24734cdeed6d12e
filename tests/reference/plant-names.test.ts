import { referencePlants } from '@rootclock/server/reference/index';
import { matchName, nameKey, parseScientificName, plantCode } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

const named = referencePlants.map((plant) => ({
  id: plant.code,
  scientificName: `${plant.scientificName} ${plant.scientificNameAuthorship}`.trim(),
  synonyms: plant.synonyms.map((synonym) => `${synonym.scientificName} ${synonym.scientificNameAuthorship}`),
  vernacularNames: plant.commonNames.map((common) => common.name),
}));

describe('common names', () => {
  it.each([
    ['butterfly weed', ['ASCU', 'ASTU', 'ASTUA']],
    ['Butterfly Milkweed', ['ASCU', 'ASTU', 'ASTUA']],
    ['black-eyed Susan', ['RUFU', 'RUHI']],
    ['blazing star', ['LIAS', 'LIPY']],
    ['coneflower', ['ECPA', 'ECPU', 'RUFU', 'RUHI']],
    ['wild indigo', ['BAAL', 'BAAU']],
    ['goldenrod', ['SORI', 'SOSP']],
    ['violet', ['VIPE', 'VISO']],
  ])('%s is ambiguous and points at all its plants', (name, plantIds) => {
    expect(matchName(name, named)).toEqual({ kind: 'ambiguous', plantIds });
  });

  it('reach every milkweed through "milkweed"', () => {
    const milkweeds = referencePlants.filter((plant) => plant.genus === 'Asclepias').map((plant) => plant.code);
    expect(matchName('milkweed', named)).toEqual({ kind: 'ambiguous', plantIds: milkweeds.sort() });
  });

  it.each([
    ['compass plant', 'SILA'],
    ["Dutchman's pipe", 'ARMA'],
    ['tropical milkweed', 'ASCU'],
    ['purple coneflower', 'ECPU'],
  ])('%s means one plant', (name, plantId) => {
    expect(matchName(name, named)).toEqual({ kind: 'common', plantId, name });
  });

  it('are each looked up under a key of their own within a plant', () => {
    for (const { id, vernacularNames } of named) {
      expect(new Set(vernacularNames.map(nameKey)).size, id).toBe(vernacularNames.length);
    }
  });

  it('begin with the vernacular name, each with its standing', () => {
    for (const { commonNames, vernacularName } of referencePlants) {
      expect(commonNames[0]?.name).toBe(vernacularName);
      expect(commonNames.every((common) => common.standing === 'from memory')).toBe(true);
    }
  });
});

describe('scientific names', () => {
  it('are made of their Darwin Core parts', () => {
    for (const [index, plant] of referencePlants.entries()) {
      const {
        scientificName,
        scientificNameAuthorship,
        genus,
        specificEpithet,
        infraspecificEpithet,
        cultivarEpithet,
        taxonRank,
      } = plant;
      expect(parseScientificName(named[index]?.scientificName ?? '')).toEqual({
        scientificName,
        scientificNameAuthorship,
        genus,
        specificEpithet,
        infraspecificEpithet,
        cultivarEpithet,
        taxonRank,
        hybrid: false,
      });
    }
  });

  it('have an author with every species and none with a cultivar', () => {
    expect(
      referencePlants.filter((plant) => (plant.scientificNameAuthorship === '') !== (plant.taxonRank === 'cultivar')),
    ).toEqual([]);
  });

  // ICNCP, 9th ed. 2016: single quotes, capitalised, no "cv.".
  it('of cultivars are written as the code of nomenclature for cultivated plants asks', () => {
    const cultivars = referencePlants.filter((plant) => plant.taxonRank === 'cultivar');
    expect(cultivars.length).toBeGreaterThan(0);
    for (const { scientificName, cultivarEpithet } of cultivars) {
      expect(scientificName).toMatch(/^[A-Z][a-z]+ [a-z-]+ '[A-Z][^']*'$/);
      expect(scientificName).not.toMatch(/\bcv\./);
      expect((cultivarEpithet ?? '').split(' ').every((word) => /^[A-Z]/.test(word))).toBe(true);
    }
  });

  it('of a cultivar bring assumptions about it and no native range', () => {
    const cultivar = referencePlants.find((plant) => plant.taxonRank === 'cultivar');
    expect(cultivar?.facts.heightCm.standing).toBe('assumed');
    expect(cultivar?.facts.nativeRegions.value).toEqual([]);
  });

  it('have the codes the server would give them in the order of the list', () => {
    const taken = new Set<string>();
    for (const plant of referencePlants) {
      expect(plant.code).toBe(plantCode(plant.scientificName, taken));
      taken.add(plant.code);
    }
  });

  it.each([
    ['Aster novae-angliae L.', 'SYNO'],
    ['Aster laevis', 'SYLA'],
    ['Eupatorium maculatum', 'EUMA'],
    ['Andropogon scoparius Michx.', 'SCSC'],
    ['Oligoneuron rigidum', 'SORI'],
  ])('that were in use before still find their plant: %s is %s', (synonym, plantId) => {
    expect(matchName(synonym, named)).toMatchObject({ kind: 'synonym', plantId });
  });

  it('are never a synonym of another plant', () => {
    const accepted = new Set(referencePlants.map((plant) => plant.scientificName));
    const synonyms = referencePlants.flatMap((plant) => plant.synonyms.map((synonym) => synonym.scientificName));
    expect(synonyms.filter((name) => accepted.has(name))).toEqual([]);
    expect(new Set(synonyms).size).toBe(synonyms.length);
  });
});
