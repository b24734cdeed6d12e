import { GRAMS_PER_POUND, type ReferencePlant, referencePlants } from '@rootclock/server/reference/index';
import { STANDINGS, isMonthDay } from '@rootclock/domain';
import { describe, expect, it } from 'vitest';

/*
 * The plants a nursery can count on, with their seed counts. The names are those of a list compiled for this project
 * from public protocols, seed mix sheets and seed sellers; each plant's page names them value by value. Seeds per gram are
 * the list's own conversions, so that the product's are compared with figures it did not make.
 */
type Expected = [
  fullName: string,
  family: string,
  seedsPerPound: number | null,
  seedsPerGram: number | null,
  standing: string,
];

const expected: Expected[] = [
  ['Asclepias tuberosa L.', 'Apocynaceae', 69_143, 152.4, 'derived'],
  ['Asclepias incarnata L.', 'Apocynaceae', 70_000, 154.3, 'confirmed-vendor'],
  ['Asclepias syriaca L.', 'Apocynaceae', 67_262, 148.3, 'derived'],
  ['Asclepias verticillata L.', 'Apocynaceae', 174_240, 384.1, 'derived'],
  ['Asclepias viridis Walter', 'Apocynaceae', null, null, 'not found'],
  ['Asclepias exaltata L.', 'Apocynaceae', null, null, 'not found'],
  ['Asclepias speciosa Torr.', 'Apocynaceae', null, null, 'not found'],
  ['Baptisia alba (L.) Vent.', 'Fabaceae', 27_878, 61.5, 'derived'],
  ['Baptisia australis (L.) R. Br.', 'Fabaceae', 26_000, 57.3, 'from memory'],
  ['Echinacea pallida (Nutt.) Nutt.', 'Asteraceae', 181_437, 400, 'confirmed'],
  ['Echinacea purpurea (L.) Moench', 'Asteraceae', 106_286, 234.3, 'derived'],
  ['Liatris aspera Michx.', 'Asteraceae', 268_620, 592.2, 'derived'],
  ['Liatris pycnostachya Michx.', 'Asteraceae', 176_563, 389.3, 'derived'],
  ['Lupinus perennis L.', 'Fabaceae', 18_000, 39.7, 'from memory'],
  ['Silphium laciniatum L.', 'Asteraceae', 10_500, 23.1, 'from memory'],
  ['Silphium perfoliatum L.', 'Asteraceae', 22_400, 49.4, 'from memory'],
  ['Monarda fistulosa L.', 'Lamiaceae', 1_119_782, 2468.7, 'derived'],
  ['Zizia aurea (L.) W.D.J. Koch', 'Apiaceae', 176_000, 388, 'from memory'],
  ['Viola sororia Willd.', 'Violaceae', null, null, 'not found'],
  ['Viola pedata L.', 'Violaceae', null, null, 'not found'],
  ['Ceanothus americanus L.', 'Rhamnaceae', 113_500, 250.2, 'confirmed-vendor'],
  ['Penstemon digitalis Nutt. ex Sims', 'Plantaginaceae', 2_082_168, 4590.4, 'derived'],
  ['Solidago rigida L.', 'Asteraceae', 655_142, 1444.3, 'derived'],
  ['Solidago speciosa Nutt.', 'Asteraceae', 1_520_000, 3351, 'from memory'],
  ['Symphyotrichum novae-angliae (L.) G.L. Nesom', 'Asteraceae', 1_056_000, 2328.1, 'from memory'],
  ['Symphyotrichum laeve (L.) Á. Löve & D. Löve', 'Asteraceae', 878_170, 1936, 'derived'],
  ['Symphyotrichum oolentangiense (Riddell) G.L. Nesom', 'Asteraceae', 1_282_406, 2827.2, 'derived'],
  ['Eutrochium maculatum (L.) E.E. Lamont', 'Asteraceae', 1_520_000, 3351, 'from memory'],
  [
    'Pycnanthemum virginianum (L.) T. Durand & B.D. Jacks. ex B.L. Rob. & Fernald',
    'Lamiaceae',
    3_512_678,
    7744.1,
    'derived',
  ],
  ['Rudbeckia hirta L.', 'Asteraceae', 1_700_971, 3750, 'confirmed'],
  ['Schizachyrium scoparium (Michx.) Nash', 'Poaceae', 239_825, 528.7, 'derived'],
  ['Carex bicknellii Britton', 'Cyperaceae', 272_250, 600.2, 'derived'],
  ['Carex brevior (Dewey) Mack. ex Lunell', 'Cyperaceae', 463_404, 1021.6, 'derived'],
  ['Aristolochia macrophylla Lam.', 'Aristolochiaceae', null, null, 'not found'],
];

const plants = new Map(
  referencePlants.map((plant) => [`${plant.scientificName} ${plant.scientificNameAuthorship}`, plant]),
);

function plantOf(fullName: string): ReferencePlant {
  const plant = plants.get(fullName);
  if (plant === undefined) throw new Error(`${fullName} is not among the reference plants`);
  return plant;
}

const everyFact = referencePlants.flatMap((plant) =>
  Object.entries(plant.facts).map(([key, fact]) => ({ plant: plant.scientificName, key, ...fact })),
);

describe('the plants of the reference data', () => {
  it.each(expected)('%s is there, of the family %s', (fullName, family) => {
    expect(plantOf(fullName).family).toBe(family);
  });

  it('are the expected ones and three namesakes', () => {
    const further = referencePlants.filter((plant) => !expected.some(([fullName]) => plantOf(fullName) === plant));
    expect(further.map((plant) => plant.scientificName)).toEqual([
      'Asclepias curassavica',
      'Rudbeckia fulgida',
      "Asclepias tuberosa 'Hello Yellow'",
    ]);
  });

  it.each(expected)(
    '%s (%s) has %s seeds to the pound, %s to the gram, on the word %s',
    (fullName, _family, perPound, perGram, standing) => {
      const { seedsPerPound, seedsPerGram } = plantOf(fullName).facts;
      expect(seedsPerPound.value).toBe(perPound);
      expect(seedsPerGram.value).toBe(perGram);
      expect(seedsPerGram.standing).toBe(standing);
    },
  );

  it('convert seeds per pound with the exact pound, to within half of the last figure kept', () => {
    const counted = referencePlants.filter((plant) => plant.facts.seedsPerPound.value !== null);
    const errors = counted.map(({ facts }) =>
      Math.abs((facts.seedsPerPound.value ?? 0) / GRAMS_PER_POUND - (facts.seedsPerGram.value ?? 0)),
    );
    expect(counted.length).toBeGreaterThan(20);
    expect(Math.max(...errors)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('say of the doubtful seed count of Echinacea pallida that it is doubtful', () => {
    expect(plantOf('Echinacea pallida (Nutt.) Nutt.').facts.seedsPerGram.note).toMatch(/^Doubtful/);
  });

  it('have a standing from the list at every value', () => {
    expect(everyFact.filter((fact) => !STANDINGS.includes(fact.standing))).toEqual([]);
  });

  it('name a source wherever a value is printed or derived', () => {
    const printed = everyFact.filter((fact) => ['confirmed', 'confirmed-vendor', 'derived'].includes(fact.standing));
    expect(printed.length).toBeGreaterThan(100);
    expect(printed.filter((fact) => (fact.source ?? '').trim() === '')).toEqual([]);
  });

  it('carry no value where nothing was found', () => {
    expect(everyFact.filter((fact) => fact.standing === 'not found' && fact.value !== null)).toEqual([]);
  });

  it('have a last-emergence day that exists and months from 1 to 12, each once and in order', () => {
    for (const { facts } of referencePlants) {
      expect(isMonthDay(facts.lastEmergenceMd.value)).toBe(true);
      for (const { value } of [facts.dormantMonths, facts.bloomMonths]) {
        expect(value.every((month) => Number.isInteger(month) && month >= 1 && month <= 12)).toBe(true);
        expect(value).toEqual([...new Set(value)].sort((a, b) => a - b));
      }
    }
  });

  it('have their lower figure first in every range', () => {
    const ranges = referencePlants.flatMap(({ facts }) => [
      facts.heightCm,
      facts.spreadCm,
      facts.stratificationDays,
      facts.germinationPercent,
    ]);
    expect(ranges.filter(({ value }) => value !== null && value[0] > value[1])).toEqual([]);
  });

  it('bloom only when awake, but for one whose early bloom is printed for the south', () => {
    const both = referencePlants.filter(({ facts }) =>
      facts.bloomMonths.value.some((month) => facts.dormantMonths.value.includes(month)),
    );
    expect(both.map((plant) => plant.scientificName)).toEqual(['Asclepias viridis']);
  });
});

describe('plants that feed caterpillars', () => {
  it('are never to be sprayed', () => {
    const hosts = referencePlants.filter((plant) => plant.facts.larvalHost.value);
    expect(hosts.length).toBeGreaterThan(20);
    expect(hosts.filter((plant) => !plant.handling.some((rule) => rule.value === 'no-spray-host'))).toEqual([]);
  });

  it('are all those with a caterpillar named', () => {
    const named = referencePlants.filter((plant) => (plant.facts.larvalHostOf.value ?? []).length > 0);
    expect(named.filter((plant) => !plant.facts.larvalHost.value)).toEqual([]);
  });
});

describe('handling set by species', () => {
  it('leaves the root ball of every milkweed and every taproot alone', () => {
    const tender = referencePlants.filter(
      (plant) => plant.genus === 'Asclepias' || plant.facts.rootHabit.value === 'taproot',
    );
    const intact = tender.filter((plant) => plant.handling.some((rule) => rule.value === 'leave-root-ball-intact'));
    const loosened = tender.filter((plant) => plant.handling.some((rule) => rule.value === 'may-loosen-root-ball'));
    expect(tender.length).toBeGreaterThan(10);
    expect(intact).toEqual(tender);
    expect(loosened).toEqual([]);
  });

  it('never both forbids and allows a root ball to be loosened', () => {
    const torn = referencePlants.filter(
      (plant) =>
        plant.handling.some((rule) => rule.value === 'leave-root-ball-intact') &&
        plant.handling.some((rule) => rule.value === 'may-loosen-root-ball'),
    );
    expect(torn).toEqual([]);
  });
});

describe('cautions', () => {
  it('warn of livestock or poison at every milkweed', () => {
    const milkweeds = referencePlants.filter((plant) => plant.genus === 'Asclepias');
    expect(milkweeds.every((plant) => plant.cautions.some((caution) => /livestock|horses/.test(caution.text)))).toBe(
      true,
    );
  });

  it('keep the tropical milkweed out of monarch plantings, with the standard named', () => {
    const tropical = plantOf('Asclepias curassavica L.');
    expect(tropical.facts.plantingCaution).toMatchObject({
      standing: 'confirmed',
      source: expect.stringContaining('IS-MO-643'),
    });
    expect(tropical.facts.establishmentMeans.value).toBe('introduced');
    expect(tropical.facts.nativeRegions.value).toEqual([]);
  });

  it('warn of the acids of pipevine', () => {
    expect(
      plantOf('Aristolochia macrophylla Lam.')
        .cautions.map((caution) => caution.text)
        .join(),
    ).toContain('aristolochic');
  });
});
