import type { SampleBodies } from './bodies.ts';

const happenedOn = '2026-05-20';

export const sources: SampleBodies<'sources'> = {
  addSource: (ids) => [
    { sourceId: ids.made('sourceId'), plantId: ids.plantId, kind: 'mother-plants', motherLotId: ids.lotId },
    {
      sourceId: ids.made('sourceId'),
      plantId: ids.plantId,
      kind: 'seed-collection',
      rawGrams: 90,
      cleanedGrams: 30,
      purity: 0.95,
      seedsPerGram: 150,
      sowFresh: true,
      neverDry: true,
      storage: 'cold-moist',
      storedOn: happenedOn,
    },
  ],
  editSource: (ids) => [
    { sourceId: ids.idleSourceId, kind: 'mother-plants', motherLotId: ids.lotId },
    {
      sourceId: ids.seedSourceId,
      kind: 'bought-seed',
      purity: 0.9,
      storage: 'frozen',
      was: { kind: 'seed-collection', purity: null, storage: null },
    },
  ],
  retireSource: (ids) => [{ sourceId: ids.idleSourceId }],
  restoreSource: (ids) => [{ sourceId: ids.retiredSourceId }],
  listSources: (ids) => [{}, { state: 'all', text: ids.mark }, { plantId: ids.plantId, sort: 'grams' }],
  readSource: (ids) => [{ sourceId: ids.sourceId }, { sourceId: ids.seedSourceId }, { sourceId: ids.blendId }],
  receiveSeed: (ids) => [{ sourceId: ids.seedSourceId, kind: 'cleaned', grams: 4.25, happenedOn }],
  weighSeed: (ids) => [{ sourceId: ids.seedSourceId, grams: 19.5, happenedOn }],
  takeSeed: (ids) => [{ sourceId: ids.seedSourceId, reason: 'given', grams: 2, happenedOn }],
  blendSources: (ids) => [
    {
      sourceId: ids.made('sourceId'),
      parts: [
        { sourceId: ids.seedSourceId, grams: 3 },
        { sourceId: ids.secondSeedSourceId, grams: 1 },
      ],
      happenedOn,
      storage: 'cold-dry',
    },
  ],
  takeBackSeed: (ids) => [{ movementId: ids.movementId }],
  recordViabilityTest: (ids) => [
    {
      testId: ids.made('testId'),
      sourceId: ids.seedSourceId,
      testedOn: happenedOn,
      method: 'germination',
      seedsPerReplicate: 100,
      replicates: [83, 95, 89, 89],
      dormantShare: 0.05,
    },
    {
      testId: ids.made('testId'),
      sourceId: ids.seedSourceId,
      testedOn: happenedOn,
      method: 'cut',
      seedsPerReplicate: 25,
      replicates: [20],
    },
  ],
  withdrawViabilityTest: (ids) => [{ testId: ids.testId }],
};
