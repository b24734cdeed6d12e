import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('garden orders', () => {
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
  const as = (role: 'owner' | 'grower' | 'crew' | 'viewer' = 'grower') => nursery.as(role);
  const newOrder = (change: object) => ({
    orderId: randomUUID(),
    clientId: story.clientId,
    siteId: story.siteId,
    kind: 'installation' as const,
    dueOn: '2026-06-01',
    ...change,
  });
  const lineOfStory = (change: object = {}) => ({
    lineId: randomUUID(),
    plantId: story.plantId,
    containerId: story.containerId,
    units: 3,
    ...change,
  });

  it('get a code of their year and lines in the order of their turn', async () => {
    const first = await story.order([{ units: 3 }, { units: 4 }]);
    const second = await story.order([{ units: 5 }]);
    expect([first.code, second.code]).toEqual(['G-26-001', 'G-26-002']);
    const ranks = [...(await story.read(first.orderId)).lineRows, ...(await story.read(second.orderId)).lineRows].map(
      ({ rank, units }) => [rank, units],
    );
    expect(ranks).toEqual([
      [1, 3],
      [2, 4],
      [3, 5],
    ]);
  });

  it('are booked once though they are sent twice', async () => {
    const order = sent(newOrder({ lines: [lineOfStory()] }));
    const answers = [await as().orders.addOrder(order), await as().orders.addOrder(order)];
    expect(answers[1]).toEqual(answers[0]);
    expect((await as('viewer').promises.listOrders({})).total).toBe(1);
  });

  it('show what they want, hold and lack', async () => {
    await story.addLot({ units: 10 });
    const { orderId } = await story.order([{ units: 8 }, { units: 6 }]);
    expect(await story.read(orderId)).toMatchObject({
      lines: 2,
      wantedUnits: 14,
      reservedUnits: 10,
      stagedUnits: 0,
      deliveredUnits: 0,
      shortUnits: 4,
    });
  });

  it('are listed by state, kind, day, words and shortage, and paged', async () => {
    await story.addLot({ units: 3 });
    const full = await story.order([{ units: 3 }], { dueOn: '2026-06-01' });
    const short = await story.order([{ units: 3 }], { dueOn: '2026-07-01', kind: 'pickup' });
    const done = await story.order([{ units: 3 }], { dueOn: '2026-05-01' });
    await as('crew').orders.finishOrder(sent({ orderId: done.orderId }));
    const codes = async (filter: Parameters<ReturnType<typeof as>['promises']['listOrders']>[0]) =>
      (await as('viewer').promises.listOrders(filter)).rows.map(({ code }) => code);
    expect(await codes({})).toEqual([full.code, short.code]);
    expect(await codes({ state: null })).toEqual([done.code, full.code, short.code]);
    expect(await codes({ shortOnly: true })).toEqual([short.code]);
    expect(await codes({ kind: 'pickup' })).toEqual([short.code]);
    expect(await codes({ dueFrom: '2026-06-15' })).toEqual([short.code]);
    expect(await codes({ dueTo: '2026-06-15' })).toEqual([full.code]);
    expect(await codes({ search: 'fen', descending: true })).toEqual([short.code, full.code]);
    expect(await codes({ search: short.code })).toEqual([short.code]);
    expect(await codes({ sort: 'short', descending: true })).toEqual([short.code, full.code]);
    const second = await as('viewer').promises.listOrders({ perPage: 1, page: 2 });
    expect([second.total, second.rows.map(({ code }) => code)]).toEqual([2, [short.code]]);
    expect((await as('viewer').promises.listOrders({ perPage: 1, page: 9 })).total).toBe(2);
  });

  it('flag plants by scientific name that share a common name, are not native, or harm livestock', async () => {
    const namesake = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    for (const plantId of [story.plantId, namesake]) {
      await nursery.sql(
        `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'common', 'Milkweed', 'milkweed')`,
        [nursery.nurseryId, randomUUID(), plantId],
      );
    }
    await nursery.sql(
      `UPDATE plant SET native_regions = '{WI}', handling = '{keep-from-livestock}' WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, story.plantId],
    );
    await as().clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'MN', livestockNear: true }));
    const { orderId, lineId } = await story.order([{ units: 1 }]);
    const line = await story.lineOf(orderId, lineId);
    expect(line.flags).toEqual(['ambiguous-name', 'not-native', 'livestock-near']);
    expect(line.namesakes).toEqual([{ plantId: namesake, scientificName: 'Asclepias incarnata' }]);
    await as().clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'WI' }));
    expect((await story.lineOf(orderId, lineId)).flags).toEqual(['ambiguous-name']);
  });

  it('free their plants for others when they are cancelled', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    await as().gardens.cancelOrder(sent({ orderId: first.orderId, happenedOn: '2026-05-20' }));
    expect([await story.heldBy(first.lineId), await story.heldBy(second.lineId)]).toEqual([{}, { [lotId]: 8 }]);
    expect(await story.read(first.orderId)).toMatchObject({ state: 'cancelled', shortUnits: 0 });
  });

  it('that are cancelled bring pulled plants back to a place in the same entry, which can be taken back', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId, code } = await story.order([{ units: 8 }]);
    await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    expect(await refusalOf(as().gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' })))).toMatchObject({
      code: 'plants-are-staged',
      data: { order: code, units: 5 },
      field: 'placeId',
    });
    const cancelled = sent({ orderId, happenedOn: '2026-05-20', placeId: story.placeId });
    await as().gardens.cancelOrder(cancelled);
    expect(await story.unitsOf(lotId)).toBe(10);
    await nursery.as('grower').stock.reverseEntry(sent({ entryId: cancelled.commandId }));
    expect(await story.read(orderId)).toMatchObject({ state: 'open', stagedUnits: 5, reservedUnits: 3 });
  });

  it('that are finished free what they still held, and need nothing to be staged', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    expect((await refusalOf(as('crew').orders.finishOrder(sent({ orderId })))).code).toBe('plants-are-staged');
    await as('crew').gardens.plantOrder(
      sent({ orderId, happenedOn: '2026-05-20', rows: [{ lineId, lotId, units: 5 }] }),
    );
    await as('crew').orders.finishOrder(sent({ orderId }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect(await story.read(orderId)).toMatchObject({ state: 'done', deliveredUnits: 5, shortUnits: 0 });
  });

  it('take no more changes when they are over', async () => {
    const { orderId, lineId } = await story.order([{ units: 3 }]);
    await as('crew').orders.finishOrder(sent({ orderId }));
    for (const attempt of [
      () => as().orders.addLine(sent({ orderId, ...lineOfStory() })),
      () => as().promises.editLine(sent({ lineId, units: 4 })),
      () => as().orders.withdrawLine(sent({ lineId })),
      () => as().promises.changeDay(sent({ orderId, dueOn: '2026-07-01' })),
      () => as().gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' })),
      () => as('crew').orders.finishOrder(sent({ orderId })),
      () => as().gardens.issuePullList(sent({ orderId })),
    ])
      expect((await refusalOf(attempt())).code).toBe('order-not-open');
  });

  it('take a note at any time', async () => {
    const { orderId } = await story.order([{ units: 3 }]);
    await as('crew').orders.finishOrder(sent({ orderId }));
    await as().orders.editOrder(sent({ orderId, note: 'The client sends pictures.' }));
    expect((await story.read(orderId)).note).toBe('The client sends pictures.');
  });

  it('lose a line that is withdrawn, with its promises', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    await as().orders.withdrawLine(sent({ lineId: first.lineId }));
    expect(await story.heldBy(second.lineId)).toEqual({ [lotId]: 8 });
    expect(await story.read(first.orderId)).toMatchObject({ lines: 0, wantedUnits: 0 });
    expect((await refusalOf(as().orders.withdrawLine(sent({ lineId: first.lineId })))).code).toBe('line-withdrawn');
    await story.pull(second.orderId, [{ lineId: second.lineId, lotId, units: 1 }]);
    expect((await refusalOf(as().orders.withdrawLine(sent({ lineId: second.lineId })))).code).toBe('plants-are-staged');
  });

  it('are refused without a site to plant at, at another client’s site, or in another site’s bed', async () => {
    expect(await refusalOf(as().orders.addOrder(sent(newOrder({ siteId: null }))))).toMatchObject({
      code: 'site-needed',
      field: 'siteId',
    });
    const other = { clientId: randomUUID(), siteId: randomUUID(), bedId: randomUUID() };
    await as().clients.addClient(sent({ clientId: other.clientId, name: 'Alder Lane' }));
    await as().clients.addSite(sent({ siteId: other.siteId, clientId: other.clientId, name: 'Yard' }));
    await as().clients.addBed(sent({ bedId: other.bedId, siteId: other.siteId, name: 'Front' }));
    expect(await refusalOf(as().orders.addOrder(sent(newOrder({ siteId: other.siteId }))))).toMatchObject({
      code: 'site-of-other-client',
      data: { site: 'Yard' },
      field: 'siteId',
    });
    expect(
      await refusalOf(as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ bedId: other.bedId })] })))),
    ).toMatchObject({ code: 'bed-of-other-site', data: { bed: 'Front' }, field: 'lines.0.bedId' });
  });

  it('are refused where an alternative stands twice or is what was asked for', async () => {
    const asked = { plantId: story.plantId, containerId: story.containerId };
    expect(
      await refusalOf(as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ alternatives: [asked] })] })))),
    ).toMatchObject({ code: 'alternative-twice', field: 'lines.0.alternatives' });
  });

  it('are refused with ids of nobody, beside the field', async () => {
    const nobody = randomUUID();
    const { orderId, lineId } = await story.order([{ units: 3 }]);
    const expected = async (work: Promise<unknown>, field: string) =>
      expect(await refusalOf(work)).toMatchObject({ code: 'not-found', field });
    await expected(as().orders.addOrder(sent(newOrder({ clientId: nobody }))), 'clientId');
    await expected(as().orders.addOrder(sent(newOrder({ siteId: nobody }))), 'siteId');
    await expected(
      as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ plantId: nobody })] }))),
      'lines.0.plantId',
    );
    await expected(
      as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ containerId: nobody })] }))),
      'lines.0.containerId',
    );
    await expected(as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ bedId: nobody })] }))), 'bedId');
    await expected(as().orders.addLine(sent({ orderId: nobody, ...lineOfStory() })), 'orderId');
    await expected(
      as().orders.addLine(
        sent({ orderId, ...lineOfStory({ alternatives: [{ plantId: nobody, containerId: story.containerId }] }) }),
      ),
      'alternatives',
    );
    await expected(as().promises.editLine(sent({ lineId: nobody, units: 3 })), 'lineId');
    await expected(as().promises.editLine(sent({ lineId, units: 3, bedId: nobody })), 'bedId');
    await expected(as().promises.changeDay(sent({ orderId: nobody, dueOn: '2026-07-01' })), 'orderId');
    await expected(as('viewer').promises.readOrder({ orderId: nobody }), 'orderId');
    await expected(as('viewer').gardens.readPullList({ orderId: nobody }), 'orderId');
    await expected(
      nursery.as('viewer').promises.whatIf({ kind: 'move-order', orderId: nobody, dueOn: '2026-07-01' }),
      'orderId',
    );
    await expected(nursery.as('viewer').promises.demandFor({ supplyId: nobody }), 'supplyId');
    await expected(nursery.as('viewer').promises.offersFor({ lineId: nobody }), 'lineId');
    await expected(
      nursery.as('viewer').promises.offersFor({ plantId: nobody, containerId: story.containerId, on: '2026-06-01' }),
      'plantId',
    );
  });

  it('are refused with units that are none and days that do not exist', async () => {
    expect(await refusalOf(as().orders.addOrder(sent(newOrder({ lines: [lineOfStory({ units: 0 })] }))))).toMatchObject(
      {
        code: 'invalid-input',
        field: 'lines.0.units',
      },
    );
    expect(await refusalOf(as().orders.addOrder(sent(newOrder({ dueOn: '2026-02-30' }))))).toMatchObject({
      code: 'invalid-input',
      field: 'dueOn',
    });
  });

  it('are for growers to make and for everyone to see', async () => {
    expect((await refusalOf(as('crew').orders.addOrder(sent(newOrder({}))))).code).toBe('not-allowed');
    expect((await as('viewer').promises.listOrders({})).rows).toEqual([]);
  });
});
