import type { SampleBodies, SampleIds } from './bodies.ts';

const entry = ({ today, mark }: SampleIds) => ({ happenedOn: today, note: mark });
const newLot = (ids: SampleIds, units = 2) => ({
  lotId: ids.made('lotId'),
  containerId: ids.bigContainerId,
  placeId: ids.otherPlaceId,
  units,
});
const treatment = ({ mark }: SampleIds) => ({
  product: mark,
  applicator: mark,
  treatedAt: '2026-05-20T12:00:00Z',
  reentryHours: 24,
});

export const stock: SampleBodies<'stock'> = {
  receiveOpening: (ids) => [
    {
      happenedOn: ids.today,
      rows: [
        {
          lotId: ids.made('lotId'),
          plantId: ids.plantId,
          containerId: ids.containerId,
          placeId: ids.placeId,
          units: 10,
          since: '2026-04',
          sourceId: ids.sourceId,
        },
      ],
    },
  ],
  receiveBought: (ids) => [
    {
      happenedOn: ids.today,
      vendor: ids.mark,
      lines: [
        {
          lotId: ids.made('lotId'),
          plantId: ids.plantId,
          form: 'plugs',
          containerId: ids.trayId,
          placeId: ids.placeId,
          receivedUnits: 50,
          sourceId: ids.sourceId,
        },
      ],
    },
  ],

  addPlace: (ids) => [{ placeId: ids.made('placeId'), code: 'NEW1', kind: 'bench', parentId: ids.placeId }],
  editPlace: (ids) => [{ placeId: ids.idlePlaceId, code: 'NEW2', kind: 'bay', parentId: ids.placeId }],
  closePlace: (ids) => [{ placeId: ids.idlePlaceId, untilAt: '2026-05-22T12:00:00Z', reason: 'mud' }],
  openPlace: (ids) => [{ placeId: ids.closedPlaceId, reason: 'dry again' }],
  retirePlace: (ids) => [{ placeId: ids.idlePlaceId }],
  restorePlace: (ids) => [{ placeId: ids.retiredPlaceId }],
  listPlaces: () => [{}, { retired: true }],
  readPlace: (ids) => [{ placeId: ids.placeId }],
  listLots: (ids) => [
    {},
    { state: 'all', text: ids.mark },
    { plantId: ids.plantId },
    { containerId: ids.containerId },
    { placeId: ids.placeId },
    { sourceId: ids.sourceId },
  ],

  convertLot: (ids) => [
    {
      conversion: 'divide',
      from: [{ lotId: ids.lotId, placeId: ids.placeId, units: 1 }],
      into: [newLot(ids)],
      ...entry(ids),
    },
  ],
  potUpLot: (ids) => [{ lotId: ids.lotId, placeId: ids.placeId, into: [newLot(ids)], ...entry(ids) }],
  splitLot: (ids) => [
    {
      lotId: ids.lotId,
      placeId: ids.placeId,
      into: [{ lotId: ids.made('lotId'), placeId: ids.otherPlaceId, units: 2 }],
      ...entry(ids),
    },
  ],
  mergeLots: (ids) => [
    { lotIds: [ids.lotId, ids.twinLotId], into: { lotId: ids.made('lotId'), placeId: ids.placeId }, ...entry(ids) },
  ],
  plantInBed: (ids) => [
    {
      lotId: ids.lotId,
      placeId: ids.placeId,
      units: 2,
      into: { lotId: ids.made('lotId'), bedId: ids.nurseryBedId, containerId: ids.groundId },
      ...entry(ids),
    },
  ],
  liftFromBed: (ids) => [
    { lotId: ids.bedLotId, placeId: ids.nurseryBedId, units: 2, into: [newLot(ids)], ...entry(ids) },
  ],
  reIdentifyLot: (ids) => [{ lotId: ids.lotId, plantId: ids.otherPlantId, ...entry(ids) }],
  reIdentifySource: (ids) => [{ sourceId: ids.sourceId, plantId: ids.otherPlantId, ...entry(ids) }],
  holdMany: (ids) => [{ lotIds: [ids.lotId], placeId: ids.placeId, reason: 'inspector', ...entry(ids) }],
  releaseLot: (ids) => [{ lotId: ids.heldLotId, reason: 'quarantine', releaseReason: 'looked it over', ...entry(ids) }],
  sellFromLot: (ids) => [{ lotId: ids.lotId, placeId: ids.placeId, units: 2, party: ids.mark, ...entry(ids) }],
  giveFromLot: (ids) => [{ lotId: ids.lotId, placeId: ids.placeId, units: 2, party: ids.mark, ...entry(ids) }],
  loseFromLot: (ids) => [{ lotId: ids.lotId, placeId: ids.placeId, units: 2, cause: 'drought', ...entry(ids) }],
  loseMany: (ids) => [
    { lotIds: [ids.lotId, ids.twinLotId], placeId: ids.placeId, percent: 10, cause: 'drought', ...entry(ids) },
  ],
  countLot: (ids) => [
    { lotId: ids.lotId, placeId: ids.placeId, countedUnits: 30, countKind: 'counted', ...entry(ids) },
  ],
  observeMany: (ids) => [
    { lotIds: [ids.lotId], placeId: ids.placeId, kind: 'root-ball', result: 'holds', ...entry(ids) },
  ],
  moveLot: (ids) => [{ lotId: ids.lotId, placeId: ids.placeId, units: 2, toPlaceId: ids.otherPlaceId, ...entry(ids) }],
  moveMany: (ids) => [
    { lotIds: [ids.lotId, ids.twinLotId], placeId: ids.placeId, toPlaceId: ids.otherPlaceId, ...entry(ids) },
  ],
  readLot: (ids) => [{ lotId: ids.lotId }],
  readLotEntries: (ids) => [{ lotId: ids.lotId, before: { happenedOn: '2026-12-31', version: 1_000_000 } }],

  countSpring: (ids) => [
    {
      counts: [{ lotId: ids.lotId, placeId: ids.placeId, upUnits: 1, deadUnits: 0, notUpUnits: 1 }],
      bookDifferences: true,
      ...entry(ids),
    },
  ],
  listNotUp: (ids) => [{}, { placeId: ids.placeId, waiting: true }],
  readLivingRates: (ids) => [{ lotId: ids.lotId }],
  readSpringSheet: (ids) => [{ placeId: ids.placeId }, { lotId: ids.lotId }],

  treatLots: (ids) => [{ lotIds: [ids.lotId], ...treatment(ids) }],
  treatPlace: (ids) => [{ placeId: ids.placeId, ...treatment(ids) }],
  reverseEntry: (ids) => [{ entryId: ids.entryId, note: 'a slip' }],
};
