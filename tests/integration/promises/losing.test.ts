import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';

const today = '2026-05-20';
let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
beforeAll(async () => {
  database = await createDatabase();
});
beforeEach(async () => {
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  return () => nursery.close();
});
afterAll(() => database.drop());

const codeOf = async (lotId: string) =>
  (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
const rows = async () => (await nursery.as('viewer').promises.listLosses({})).rows;
/** Order, units short, and what was lost by which kind of entry of what. */
const losses = async () =>
  (await rows()).map(({ orderCode, shortUnits, causes }) => [
    orderCode,
    shortUnits,
    ...causes.map(
      ({ units, source, entryKind, codes, whys }) =>
        `${units} by ${entryKind ?? source} of ${codes.join(', ')}: ${whys.join(', ')}`,
    ),
  ]);
const settled = () =>
  nursery.sql<{ how: string; note: string }>(
    'SELECT settled_how AS how, note FROM line_loss WHERE nursery_id = $1 ORDER BY settled_how, note',
    [nursery.nurseryId],
  );

describe('when a batch', () => {
  let batches: Awaited<ReturnType<typeof batchesOf>>;
  beforeEach(async () => {
    batches = await batchesOf(nursery, { code: 'ASIN', name: 'Asclepias incarnata' });
  });
  const orderOfBatch = (units: number, dueOn = '2026-06-20') =>
    story.order([{ units, plantId: batches.plantId, containerId: batches.potId }], { dueOn });

  it('turns out worse, the lines that lose plants are named, the last in turn first to lose', async () => {
    const { batchId, code } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    // The nearest day stands first on the list, though its turn is the last.
    const [first, second, third] = [
      await orderOfBatch(15),
      await orderOfBatch(15),
      await orderOfBatch(10, '2026-06-18'),
    ];
    expect(await losses()).toEqual([]);
    await batches.propagation.loseFromBatch(sent({ batchId, units: 88, cause: 'rot' as const, happenedOn: today }));
    expect(await losses()).toEqual([
      [third.code, 10, `10 by lose of ${code}: gone`],
      [first.code, 3, `3 by lose of ${code}: gone`],
      [second.code, 15, `15 by lose of ${code}: gone`],
    ]);
    expect((await rows())[0]).toMatchObject({
      orderId: third.orderId,
      clientName: 'Fen Hollow',
      scientificName: 'Asclepias incarnata',
      dueOn: '2026-06-18',
      units: 10,
      causes: [{ personName: 'Test grower', happenedOn: today }],
    });
  });

  it('is late, only lines whose day is before its new one lose', async () => {
    const { batchId, code } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    const early = await orderOfBatch(15, '2026-06-20');
    await orderOfBatch(15, '2026-07-20');
    await batches.propagation.setBatchForecast(
      sent({
        batchId,
        cautiousUnits: 40,
        usualUnits: null,
        targetContainerId: batches.potId,
        readyOn: '2026-07-10',
        happenedOn: today,
      }),
    );
    expect(await losses()).toEqual([[early.code, 15, `15 by observe of ${code}: not-ready`]]);
    // On time after all.
    await batches.propagation.setBatchForecast(
      sent({
        batchId,
        cautiousUnits: 40,
        usualUnits: null,
        targetContainerId: batches.potId,
        readyOn: '2026-06-16',
        happenedOn: today,
      }),
    );
    expect(await losses()).toEqual([]);
    expect(await settled()).toEqual([{ how: 'whole', note: '' }]);
  });

  it('is potted in full, its lines lose nothing, and where fewer came through, only so many', async () => {
    const { batchId, code } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    const { lineId, code: order } = await orderOfBatch(30);
    await batches.count(batchId, 60, '2026-04-10');
    await batches.pot(batchId, 100, 22, '2026-05-15');
    expect(Object.values(await story.heldBy(lineId))).toEqual([22]);
    expect((await losses()).map(([of, short]) => [of, short])).toEqual([[order, 8]]);
    expect((await rows())[0]?.causes).toMatchObject([{ units: 8, entryKind: 'pot', codes: [code] }]);
  });
});

describe('when a lot', () => {
  it('is lost, a line filled again from elsewhere loses nothing, and the one that gives way is told of the lot that was lost', async () => {
    const lost = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    await story.addLot({ units: 8, plantByOn: '2026-09-01' });
    const [first, last] = [await story.order([{ units: 10 }]), await story.order([{ units: 8 }])];
    await story.lose(lost, 4);
    expect(await losses()).toEqual([[last.code, 4, `4 by lose of ${await codeOf(lost)}: to-others`]]);
    expect((await story.read(first.orderId)).shortUnits).toBe(0);
    expect((await rows())[0]?.causes[0]?.personName).toBe('Test crew');
  });

  it('is held, its lines lose until it is released', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { code } = await story.order([{ units: 6 }]);
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector' as const, happenedOn: today }));
    expect(await losses()).toEqual([[code, 6, `6 by hold of ${await codeOf(lotId)}: held`]]);
    await nursery
      .as('grower')
      .stock.releaseLot(sent({ lotId, reason: 'inspector' as const, releaseReason: 'Seen.', happenedOn: today }));
    expect(await losses()).toEqual([]);
  });

  it('is found to be another plant, its lines lose', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { code } = await story.order([{ units: 6 }]);
    const otherPlantId = await story.addPlant({ code: 'ASSY', name: 'Asclepias syriaca' });
    await nursery
      .as('grower')
      .stock.reIdentifyLot(sent({ lotId, plantId: otherPlantId, happenedOn: today, note: 'Leaves are opposite.' }));
    expect(await losses()).toEqual([[code, 6, `6 by re-identify of ${await codeOf(lotId)}: not-accepted`]]);
  });

  it('loses plants twice, both are told under one line; taking the entries back fills it and settles both', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { code } = await story.order([{ units: 10 }]);
    const lotCode = await codeOf(lotId);
    const one = await story.lose(lotId, 2);
    const two = await story.lose(lotId, 3);
    expect(await losses()).toEqual([[code, 5, `3 by lose of ${lotCode}: gone`, `2 by lose of ${lotCode}: gone`]]);
    await nursery.as('grower').stock.reverseEntry(sent({ entryId: two.entryId }));
    // Still two short: nothing is settled yet.
    expect(await losses()).toEqual([[code, 2, `3 by lose of ${lotCode}: gone`, `2 by lose of ${lotCode}: gone`]]);
    await nursery.as('grower').stock.reverseEntry(sent({ entryId: one.entryId }));
    expect(await losses()).toEqual([]);
    expect(await settled()).toEqual([
      { how: 'whole', note: '' },
      { how: 'whole', note: '' },
    ]);
  });

  it('passes its plant-by day overnight, its lines lose by the day alone', async () => {
    const lotId = await story.addLot({ units: 10, plantByOn: '2026-05-22' });
    const { code } = await story.order([{ units: 6 }], { dueOn: '2026-05-21' });
    nursery.clock.set('2026-05-25');
    await nursery.as('grower').clients.addClient(sent({ clientId: crypto.randomUUID(), name: 'Another client' }));
    expect(await losses()).toEqual([[code, 6, `6 by day of ${await codeOf(lotId)}: past-plant-by`]]);
    expect((await rows())[0]?.causes[0]?.personName).toBeNull();
  });
});

describe('what people do to an order themselves', () => {
  it('is no loss of it: another day, a release, fewer plants, a pull', async () => {
    const lotId = await story.addLot({ units: 20, plantByOn: '2026-06-15' });
    const moved = await story.order([{ units: 5 }]);
    const released = await story.order([{ units: 5 }]);
    const pulled = await story.order([{ units: 5 }]);
    const { promises } = nursery.as('grower');
    await promises.changeDay(
      sent({ orderId: moved.orderId, dueOn: '2026-07-01', acceptedShortages: [{ lineId: moved.lineId, units: 5 }] }),
    );
    await promises.releaseReservation(sent({ lineId: released.lineId, supplyId: lotId }));
    await promises.editLine(sent({ lineId: pulled.lineId, units: 4 }));
    await story.pull(pulled.orderId, [{ lineId: pulled.lineId, lotId, units: 3 }]);
    expect((await story.read(moved.orderId)).shortUnits).toBe(5);
    expect((await story.read(released.orderId)).shortUnits).toBe(5);
    expect(await nursery.sql('SELECT id FROM line_loss WHERE nursery_id = $1', [nursery.nurseryId])).toEqual([]);
  });

  it('is a loss of the other order that gives way, told as such', async () => {
    const lotId = await story.addLot({ units: 5 });
    const first = await story.order([{ units: 5 }]);
    const second = await story.order([{ units: 5 }]);
    await nursery.as('grower').promises.pinReservation(
      sent({
        lineId: second.lineId,
        supplyId: lotId,
        units: 2,
        acceptedShortages: [{ lineId: first.lineId, units: 2 }],
      }),
    );
    expect(await losses()).toEqual([[first.code, 2, `2 by order of ${await codeOf(lotId)}: to-others`]]);
  });
});

describe('a loss is no longer shown', () => {
  it('once its order wants no more than it has, its line is withdrawn, or its order is over', async () => {
    const lotId = await story.addLot({ units: 15 });
    const [fewer, withdrawn, cancelled] = [
      await story.order([{ units: 5 }]),
      await story.order([{ units: 5 }, { units: 1 }]),
      await story.order([{ units: 4 }]),
    ];
    await story.lose(lotId, 12);
    expect((await losses()).map(([code, short]) => [code, short])).toEqual([
      [fewer.code, 2],
      [withdrawn.code, 5],
      [withdrawn.code, 1],
      [cancelled.code, 4],
    ]);
    const { gardens, orders, promises } = nursery.as('grower');
    await promises.editLine(sent({ lineId: fewer.lineId, units: 3 }));
    await orders.withdrawLine(sent({ lineId: withdrawn.lineId }));
    await gardens.cancelOrder(sent({ orderId: cancelled.orderId, happenedOn: today }));
    expect((await losses()).map(([code, short]) => [code, short])).toEqual([[withdrawn.code, 1]]);
  });

  it('once somebody sets it aside with a note; what is lost later is shown again', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { code } = await story.order([{ units: 10 }]);
    await story.lose(lotId, 2);
    await story.lose(lotId, 1);
    const lossId = (await rows())[0]?.lossId ?? '';
    expect(await refusalOf(nursery.as('crew').promises.setLossAside(sent({ lossId, note: 'Known.' })))).toMatchObject({
      code: 'not-allowed',
    });
    await nursery.as('grower').promises.setLossAside(sent({ lossId, note: 'The client takes seven.' }));
    expect(await losses()).toEqual([]);
    expect(await settled()).toEqual([
      { how: 'set-aside', note: 'The client takes seven.' },
      { how: 'set-aside', note: 'The client takes seven.' },
    ]);
    expect(await refusalOf(nursery.as('grower').promises.setLossAside(sent({ lossId, note: 'Again.' })))).toMatchObject(
      { code: 'loss-is-settled', data: { order: code, how: 'set-aside', on: today } },
    );
    await story.lose(lotId, 4);
    expect(await losses()).toEqual([[code, 7, `4 by lose of ${await codeOf(lotId)}: gone`]]);
  });
});
