import { addDays, type ViabilityMethod } from '@rootclock/domain';
import type { Grounds } from '../grounds.ts';
import { seedsPerGramOf } from '../seed.ts';
import type { Stage } from '../stage.ts';

interface Test {
  /** Days after gathering. */
  after: number;
  replicates: number[];
  method?: ViabilityMethod;
  seeds?: number;
  hardShare?: number;
  dormantShare?: number;
  note?: string;
}

interface Collection {
  plant: string;
  /** Of the year before last season, so that all of it lies in the past. */
  md: string;
  grams: number;
  raw: number;
  purity: number;
  provenance: string;
  seedZone: string;
  storage: 'cold-dry' | 'cold-moist' | 'room';
  sowFresh?: boolean;
  neverDry?: boolean;
  tests: Test[];
}

const COLLECTIONS: readonly Collection[] = [
  {
    plant: 'ASTU',
    md: '10-04',
    grams: 62.5,
    raw: 340,
    purity: 0.94,
    provenance: 'remnant on the bluff',
    seedZone: 'prairie north',
    storage: 'cold-dry',
    tests: [
      { after: 60, replicates: [86, 90, 88, 84], dormantShare: 0.06 },
      { after: 330, replicates: [79, 83, 78, 80], dormantShare: 0.05 },
    ],
  },
  {
    plant: 'ECPA',
    md: '10-11',
    grams: 40,
    raw: 210,
    purity: 0.9,
    provenance: 'railway strip, county line',
    seedZone: 'prairie north',
    storage: 'cold-dry',
    tests: [{ after: 75, replicates: [61, 58, 64, 60], dormantShare: 0.22 }],
  },
  {
    plant: 'ECPA',
    md: '10-16',
    grams: 24,
    raw: 130,
    purity: 0.86,
    provenance: 'roadside above the creek',
    seedZone: 'prairie south',
    storage: 'cold-dry',
    tests: [{ after: 80, replicates: [55, 81, 70, 59], dormantShare: 0.1, note: 'One dish dried out' }],
  },
  {
    plant: 'LUPE',
    md: '07-02',
    grams: 118,
    raw: 260,
    purity: 0.98,
    provenance: 'own seed block',
    seedZone: 'prairie north',
    storage: 'room',
    tests: [{ after: 40, replicates: [14, 11], seeds: 50, hardShare: 0.68, note: 'Not scarified' }],
  },
  {
    plant: 'MOFI',
    md: '09-28',
    grams: 18.2,
    raw: 95,
    purity: 0.82,
    provenance: 'remnant on the bluff',
    seedZone: 'prairie north',
    storage: 'cold-dry',
    tests: [{ after: 30, replicates: [88, 85, 90, 87], method: 'tetrazolium' }],
  },
  {
    plant: 'CABI',
    md: '07-20',
    grams: 33,
    raw: 80,
    purity: 0.93,
    provenance: 'own seed block',
    seedZone: 'prairie north',
    storage: 'cold-moist',
    tests: [{ after: 90, replicates: [42, 47, 39, 44], dormantShare: 0.41 }],
  },
  {
    plant: 'VIPE',
    md: '06-14',
    grams: 2.4,
    raw: 6,
    purity: 0.97,
    provenance: 'sand barrens, north slope',
    seedZone: 'prairie north',
    storage: 'cold-moist',
    sowFresh: true,
    neverDry: true,
    tests: [{ after: 5, replicates: [22], seeds: 25, method: 'cut' }],
  },
];

/** A shelf of stored seed, with what was tested, given away, weighed anew and blended. */
export function planSeedStores(stage: Stage, grounds: Grounds, lastYear: number): void {
  const { chance } = stage;
  const coneflowers: { sourceId: string; grams: number }[] = [];
  for (const { plant, md, grams, raw, tests, ...said } of COLLECTIONS) {
    const gatheredOn = `${lastYear - 1}-${md}`;
    const sourceId = chance.id();
    if (plant === 'ECPA') coneflowers.push({ sourceId, grams: grams / 2 });
    stage.onWorkday(addDays(gatheredOn, 4), async (day) => {
      await stage.as('grower').sources.addSource(
        stage.sent({
          sourceId,
          plantId: grounds.plant(plant),
          kind: 'seed-collection',
          origin: 'wild',
          gathered: gatheredOn,
          collector: 'Odalys Fennmark',
          rawGrams: raw,
          cleanedGrams: grams,
          storedOn: day,
          seedsPerGram: Math.round(seedsPerGramOf(plant) * 1.04),
          ...said,
        }),
      );
    });
    for (const { after, seeds = 100, method = 'germination', ...counted } of tests) {
      stage.onWorkday(addDays(gatheredOn, after), async (day) => {
        await stage
          .as('grower')
          .sources.recordViabilityTest(
            stage.sent({ testId: chance.id(), sourceId, testedOn: day, method, seedsPerReplicate: seeds, ...counted }),
          );
        // Seed of a test is used up by it, and too light to weigh where it is fine.
        const used = Math.max(
          0.001,
          Math.round(((seeds * counted.replicates.length) / seedsPerGramOf(plant)) * 1000) / 1000,
        );
        await stage
          .as('grower')
          .sources.takeSeed(stage.sent({ sourceId, reason: 'tested', grams: used, happenedOn: day }));
      });
    }
    if (plant === 'LUPE') {
      stage.onWorkday(
        addDays(gatheredOn, 120),
        async (day) =>
          void (await stage.as('crew').sources.takeSeed(
            stage.sent({
              sourceId,
              reason: 'given',
              grams: 12,
              happenedOn: day,
              note: 'Seed exchange at the grange',
            }),
          )),
      );
      stage.onWorkday(
        addDays(gatheredOn, 200),
        async (day) =>
          void (await stage.as('crew').sources.weighSeed(stage.sent({ sourceId, grams: 104.6, happenedOn: day }))),
      );
    }
  }
  stage.onWorkday(`${lastYear}-02-03`, async (day) => {
    await stage.as('grower').sources.blendSources(
      stage.sent({
        sourceId: chance.id(),
        parts: coneflowers,
        happenedOn: day,
        storage: 'cold-dry',
        note: 'For gardens between the two zones',
      }),
    );
  });
  stage.onWorkday(`${lastYear}-02-12`, async (day) => {
    const sourceId = chance.id();
    await stage.as('owner').sources.addSource(
      stage.sent({
        sourceId,
        plantId: grounds.plant('SCSC'),
        kind: 'bought-seed',
        origin: 'cultivated',
        seedZone: 'prairie south',
        vendor: 'Low Ridge Seed',
        vendorLot: 'LR-118',
        gathered: `${lastYear - 1}-autumn`,
        cleanedGrams: 900,
        purity: 0.71,
        seedsPerGram: Math.round(seedsPerGramOf('SCSC')),
        storage: 'room',
        storedOn: day,
      }),
    );
    await stage.as('owner').sources.recordViabilityTest(
      stage.sent({
        testId: chance.id(),
        sourceId,
        testedOn: day,
        method: 'germination',
        seedsPerReplicate: 100,
        replicates: [68, 74, 71, 70],
        dormantShare: 0.08,
        note: 'From the vendor\u2019s tag',
      }),
    );
  });
}
