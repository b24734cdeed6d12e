import { randomUUID } from 'node:crypto';
import type { GardenStory } from '../../../support/gardens.ts';
import { sent, type TestNursery } from '../../../support/nursery.ts';
import { type Edit, set } from './edit.ts';

const happenedOn = '2026-05-20';
const editedSource = (columns: string, asks: { untreated?: boolean; seedZone?: string; wildType?: boolean }, ...edits: Record<string, unknown>[]): Edit => async (nursery, story) => {
  await set(nursery, 'source', columns);
  await story.addLot({ units: 10 });
  await story.order([{ units: 8, ...asks }]);
  return edits.map((edit) => () => nursery.as('grower').sources.editSource(sent({ sourceId: story.sourceId, kind: 'bought-plants' as const, ...edit })));
};

async function aBatch(nursery: TestNursery, story: GardenStory, { units = 10 } = {}) {
  const batchId = randomUUID();
  const trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, cells: 72 });
  const { propagation } = nursery.as('grower');
  await propagation.startBatch(sent({
    batchId, plantId: story.plantId, sourceId: story.sourceId, method: 'seed' as const, unit: 'cell' as const, containerId: trayId, units: 72, placeId: story.placeId, happenedOn: '2026-03-01',
    targetContainerId: story.containerId, cautiousUnits: units, readyOn: '2026-05-25',
  }));
  await propagation.countBatch(sent({ batchId, emergedUnits: 60, countKind: 'counted' as const, happenedOn: '2026-04-01' }));
  return { batchId, trayId };
}

/** Edits of places, sources, plants, containers, rules, lots and batches. */
export const stockEdits: Record<string, Edit> = {
  'a place turned into quarantine and back': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const turn = (kind: 'bench' | 'quarantine') => () => nursery.as('grower').stock.editPlace(sent({ placeId: story.placeId, code: 'BENCH', kind }));
    return [turn('quarantine'), turn('bench')];
  },
  "a source's pesticide statement": editedSource(`kind = 'bought-plants'`, { untreated: true }, { pesticideStatement: 'Untreated' }, { pesticideStatement: 'No pesticide records kept' }),
  'the kind of a source': editedSource(`kind = 'bought-plants'`, { untreated: true }, { kind: 'in-ground-bed' }, { kind: 'unknown' }),
  'the zone of a source': editedSource(`seed_zone = '3a'`, { seedZone: '3a' }, { seedZone: '5b' }, { seedZone: '3a' }),
  'the origin of a source': editedSource(`origin = 'wild'`, { wildType: true }, { origin: 'cultivated' }, { origin: 'wild' }),
  'a treatment of earlier plants, recorded late': async (nursery, story) => {
    await set(nursery, 'plant', 'larval_host = false');
    const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
    const lotId = await story.addLot({ units: 20 });
    const { stock } = nursery.as('grower');
    await stock.potUpLot(sent({ lotId, into: [{ lotId: randomUUID(), containerId: bigId, placeId: story.placeId, units: 10, readyOn: happenedOn }], happenedOn: '2026-05-18' }));
    await story.order([{ units: 8, containerId: bigId, untreated: true }]);
    let entryId = '';
    return [
      async () => ({ entryId } = await stock.treatLots(sent({ lotIds: [lotId], product: 'Soap', applicator: 'Robin', treatedAt: '2026-05-10T12:00:00Z' }))),
      () => stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a treatment of packs, recorded late': async (nursery, story) => {
    await set(nursery, 'plant', 'larval_host = false');
    const { propagation, stock } = nursery.as('grower');
    const coldId = await story.addPlace({ code: 'COLD', kind: 'cold-frame' });
    const trayId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
    const [packsId, batchId] = [randomUUID(), randomUUID()];
    const seed = { plantId: story.plantId, sourceId: story.sourceId, method: 'seed' as const };
    await propagation.startBatch(sent({ ...seed, batchId: packsId, unit: 'pack' as const, containerId: null, units: 4, placeId: coldId, happenedOn: '2026-02-01' }));
    await propagation.startBatch(sent({
      ...seed, batchId, unit: 'cell' as const, containerId: trayId, units: 50, placeId: story.placeId, fromPacks: { batchId: packsId, units: 1 }, happenedOn: '2026-03-01',
      targetContainerId: story.containerId, cautiousUnits: 9, readyOn: happenedOn,
    }));
    const lotId = randomUUID();
    await propagation.potBatch(sent({ batchId, happenedOn, firstAlive: '2026-04', lots: [{ lotId, containerId: story.containerId, placeId: story.placeId, unitsOut: 5, pottedUnits: 5, readyOn: happenedOn }] }));
    await story.order([{ units: 8, untreated: true }]);
    let entryId = '';
    return [
      async () => ({ entryId } = await stock.treatPlace(sent({ placeId: coldId, product: 'Soap', applicator: 'Robin', treatedAt: '2026-02-20T12:00:00Z' }))),
      () => stock.reverseEntry(sent({ entryId })),
    ];
  },
  'plants moved into quarantine': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const move = (placeId: string, toPlaceId: string) => () => nursery.as('crew').stock.moveLot(sent({ lotId, placeId, units: 6, toPlaceId, happenedOn }));
    return [move(story.placeId, story.quarantineId), move(story.quarantineId, story.placeId)];
  },
  'the last plants lost': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    let entryId = '';
    return [async () => ({ entryId } = await story.lose(lotId, 10)), () => nursery.as('grower').stock.reverseEntry(sent({ entryId }))];
  },
  'what stood out in the cold lost': async (nursery, story) => {
    const frameId = await story.addPlace({ code: 'FRAME', kind: 'cold-frame', winterCover: true });
    const { potLife, stock } = nursery.as('grower');
    await potLife.setFreezeDay(sent({ freezeMd: '05-28' }));
    await potLife.addRule(sent({ ruleId: randomUUID(), basis: 'no-winter' as const, span: null, reach: { plantId: story.plantId }, winterCarry: null }));
    const lotId = await story.addLot({ units: 10 });
    await stock.moveLot(sent({ lotId, placeId: story.placeId, units: 8, toPlaceId: frameId, happenedOn }));
    await story.order([{ units: 8 }], { dueOn: '2026-06-20' });
    return [() => nursery.as('crew').stock.loseFromLot(sent({ lotId, placeId: story.placeId, units: 2, cause: 'winter' as const, happenedOn }))];
  },
  'plants pulled and planted': async (nursery, story) => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const { gardens } = nursery.as('crew');
    return [
      () => story.pull(orderId, [{ lineId, lotId, units: 5 }]),
      () => gardens.plantOrder(sent({ orderId, happenedOn, rows: [{ lineId, lotId, units: 4, extra: { from: 'place' as const, placeId: story.placeId, units: 2 } }] })),
      () => gardens.returnFromOrder(sent({ orderId, happenedOn, placeId: story.placeId, rows: [{ lineId, lotId, returnedUnits: 1 }] })),
    ];
  },
  'a batch expected to give more': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 30 }]);
    return [20, 5].map((cautiousUnits) => () => nursery.as('grower').propagation.setBatchForecast(sent({ batchId, happenedOn, targetContainerId: story.containerId, cautiousUnits, readyOn: '2026-05-25' })));
  },
  'a batch ready later': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }], { dueOn: '2026-06-01' });
    return ['2026-06-02', '2026-06-01', null].map((readyOn) => () => nursery.as('grower').propagation.setBatchForecast(sent({ batchId, happenedOn, targetContainerId: story.containerId, cautiousUnits: 10, readyOn })));
  },
  'a batch meant for another pot': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    const bigId = await story.addContainer({ code: 'big-4l', volumeMl: 4000 });
    await story.order([{ units: 8 }]);
    return [bigId, story.containerId].map((targetContainerId) => () => nursery.as('grower').propagation.setBatchForecast(sent({ batchId, happenedOn, targetContainerId, cautiousUnits: 10, readyOn: '2026-05-25' })));
  },
  'a batch closed': async (nursery, story) => {
    const { batchId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }]);
    let entryId = '';
    return [
      async () => ({ entryId } = await nursery.as('grower').propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn }))),
      () => nursery.as('grower').stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a rule for the tray': async (nursery, story) => {
    const { trayId } = await aBatch(nursery, story);
    await story.order([{ units: 8 }]);
    const ruleId = randomUUID();
    const { potLife } = nursery.as('grower');
    return [
      () => potLife.addRule(sent({ ruleId, basis: 'confined' as const, span: 'P55D', reach: { plantId: story.plantId, containerId: trayId }, winterCarry: null })),
      () => potLife.editRule(sent({ ruleId, span: 'P1Y', winterCarry: null })),
    ];
  },
  'a rule for the pot': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await story.order([{ units: 8 }]);
    const ruleId = randomUUID();
    const { potLife } = nursery.as('grower');
    return [
      () => potLife.addRule(sent({ ruleId, basis: 'container' as const, span: 'P40D', reach: { plantId: story.plantId }, winterCarry: null })),
      () => potLife.editRule(sent({ ruleId, span: 'P60D', winterCarry: null })),
      () => potLife.editRule(sent({ ruleId, span: 'P40D', winterCarry: null })),
      () => potLife.retireRule(sent({ ruleId })),
    ];
  },
  'planting windows of a region': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    await story.addLot({ units: 10, plantByOn: '2026-09-30' });
    await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    const windowId = randomUUID();
    const { potLife } = nursery.as('grower');
    const days = { opensMd: '04-15', maxContainerMl: null, region: 'IA' };
    return [() => potLife.addWindow(sent({ windowId, ...days, closesMd: '06-15' })), () => potLife.editWindow(sent({ windowId, ...days, closesMd: '07-15' }))];
  },
  'the size of a pot': async (nursery, story) => {
    await set(nursery, 'site', `region = 'IA'`);
    const { plants, potLife } = nursery.as('grower');
    const days = { opensMd: '04-15', region: 'IA' };
    await potLife.addWindow(sent({ windowId: randomUUID(), ...days, closesMd: '07-15', maxContainerMl: null }));
    await potLife.addWindow(sent({ windowId: randomUUID(), ...days, closesMd: '06-15', maxContainerMl: 2000 }));
    await story.addLot({ units: 10, plantByOn: '2026-09-30' });
    await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    return [3000, 1000].map((volumeMl) => () => plants.editContainer(sent({ containerId: story.containerId, name: 'Tall', volumeMl, depthMm: 200, widthMm: null, lengthMm: null, cells: null, tradeClass: null, note: '' })));
  },
  'cells of a tray': async (nursery, story) => {
    const containerId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
    await story.addLot({ units: 100, containerId });
    await story.order([{ units: 100, containerId }]);
    return [72, 50].map((cells) => () => nursery.as('grower').plants.editContainer(sent({ containerId, name: 'Plugs', volumeMl: 110, depthMm: 200, widthMm: null, lengthMm: null, cells, tradeClass: null, note: '' })));
  },
  'a source that is another plant': async (nursery, story) => {
    await story.addLot({ units: 10 });
    await aBatch(nursery, story);
    const otherId = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    await story.order([{ units: 15 }]);
    let entryId = '';
    return [
      async () => ({ entryId } = await nursery.as('grower').stock.reIdentifySource(sent({ sourceId: story.sourceId, plantId: otherId, happenedOn }))),
      () => nursery.as('grower').stock.reverseEntry(sent({ entryId })),
    ];
  },
  'a plant that is a cultivar': async (nursery, story) => {
    await set(nursery, 'source', `origin = 'wild'`);
    await story.addLot({ units: 10 });
    await story.order([{ units: 8, wildType: true }]);
    const name = (scientificName: string) => () => nursery.as('grower').plants.editPlant(sent({ plantId: story.plantId, scientificName }));
    return [name(`Asclepias tuberosa 'Hello Yellow'`), name('Asclepias tuberosa')];
  },
};
