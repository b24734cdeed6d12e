import type { SampleBodies, SampleIds } from './bodies.ts';
import { protocolBodies } from './protocols.ts';

const entry = ({ today, mark }: SampleIds) => ({ happenedOn: today, note: mark });

export const propagation: SampleBodies<'propagation'> = {
  ...protocolBodies,
  startBatch: (ids) => [
    {
      batchId: ids.made('batchId'),
      plantId: ids.plantId,
      sourceId: ids.sourceId,
      method: 'seed',
      unit: 'cell',
      containerId: ids.trayId,
      trays: 2,
      placeId: ids.placeId,
      targetContainerId: ids.containerId,
      cautiousUnits: 60,
      readyOn: '2026-08-01',
      ...entry(ids),
    },
    {
      batchId: ids.made('batchId'),
      plantId: ids.plantId,
      sourceId: ids.seedSourceId,
      method: 'seed',
      protocolVersionId: ids.versionId,
      stagePosition: 1,
      trays: 1,
      seedGrams: 2,
      seedsSown: 100,
      placeId: ids.placeId,
      cautiousUnits: 20,
      usualUnits: 30,
      ...entry(ids),
    },
    {
      batchId: ids.made('batchId'),
      plantId: ids.plantId,
      sourceId: ids.sourceId,
      method: 'seed',
      protocolVersionId: ids.versionId,
      units: 40,
      fromPacks: { batchId: ids.packsId, units: 1, placeId: ids.placeId },
      placeId: ids.placeId,
      ...entry(ids),
    },
  ],
  beginBatchStage: (ids) => [{ batchId: ids.packsId, position: 1, ...entry(ids) }],
  readStartChoices: (ids) => [{ plantId: ids.plantId }, { plantId: ids.plantId, versionId: ids.versionId }],
  suggestForecast: (ids) => [
    { batchId: ids.batchId },
    { batchId: ids.packsId },
    {
      protocolVersionId: ids.versionId,
      units: 50,
      unit: 'cell',
      startedOn: ids.today,
      stagePosition: 1,
      containerId: ids.trayId,
      targetContainerId: ids.containerId,
    },
  ],
  countBatch: (ids) => [{ batchId: ids.batchId, emergedUnits: 70, countKind: 'counted', ...entry(ids) }],
  thinBatch: (ids) => [{ batchId: ids.batchId, thinnedUnits: 5, ...entry(ids) }],
  loseFromBatch: (ids) => [{ batchId: ids.batchId, placeId: ids.placeId, units: 5, cause: 'rot', ...entry(ids) }],
  potBatch: (ids) => [
    {
      batchId: ids.batchId,
      lots: [
        {
          lotId: ids.made('lotId'),
          containerId: ids.containerId,
          placeId: ids.placeId,
          fromPlaceId: ids.placeId,
          unitsOut: 10,
          pottedUnits: 10,
        },
      ],
      ...entry(ids),
    },
    {
      batchId: ids.batchId,
      lots: [
        {
          lotId: ids.batchLotId,
          into: 'existing',
          placeId: ids.placeId,
          fromPlaceId: ids.placeId,
          unitsOut: 10,
          pottedUnits: 10,
        },
      ],
      ...entry(ids),
    },
  ],
  moveBatch: (ids) => [
    { batchId: ids.batchId, fromPlaceId: ids.placeId, toPlaceId: ids.otherPlaceId, units: 20, ...entry(ids) },
  ],
  setBatchForecast: (ids) => [
    {
      batchId: ids.batchId,
      targetContainerId: ids.bigContainerId,
      cautiousUnits: 40,
      readyOn: '2026-08-01',
      ...entry(ids),
    },
  ],
  correctBatchUnits: (ids) => [{ batchId: ids.batchId, placeId: ids.placeId, units: 75, ...entry(ids) }],
  closeBatch: (ids) => [{ batchId: ids.batchId, writeOffCause: 'rot', ...entry(ids) }],
  keepForSecondWinter: (ids) => [{ batchId: ids.batchId, ...entry(ids) }],
  listBatches: (ids) => [{}, { state: 'all', text: ids.mark }, { plantId: ids.plantId }, { placeId: ids.placeId }],
  readBatch: (ids) => [{ batchId: ids.batchId }],
  setLearning: () => [{ priorWeight: 30, evidenceLimit: 300, planConfidencePercent: 80, winterSurvivalPercent: 85 }],
  readRecord: () => [{}],
  readPlantRecord: (ids) => [{ plantId: ids.plantId }],
};
