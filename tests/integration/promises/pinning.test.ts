import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('tying plants to a line by hand', () => {
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
  const promises = () => nursery.as('grower').promises;

  it('moves floating units of the line to the lot that was chosen', async () => {
    const sooner = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const chosen = await story.addLot({ units: 10, plantByOn: '2026-10-15' });
    const { lineId } = await story.order([{ units: 8 }]);
    await promises().pinReservation(sent({ lineId, supplyId: chosen, units: 5 }));
    expect(await story.heldBy(lineId)).toEqual({ [`${chosen}*`]: 5, [sooner]: 3 });
  });

  it('keeps pinned and floating units of one lot apart', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    await promises().pinReservation(sent({ lineId, supplyId: lotId, units: 3 }));
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 3, [lotId]: 5 });
  });

  it('names the lines it would leave shorter, and passes when exactly that was accepted', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    const pin = { lineId: second.lineId, supplyId: lotId, units: 6 };
    const refusal = await refusalOf(promises().pinReservation(sent(pin)));
    expect(refusal.code).toBe('would-shorten');
    expect(refusal.data?.lines).toEqual([
      expect.objectContaining({
        lineId: first.lineId,
        orderCode: first.code,
        filledNow: 8,
        filledThen: 4,
        shorterBy: 4,
      }),
    ]);
    expect(
      (
        await refusalOf(
          promises().pinReservation(sent({ ...pin, acceptedShortages: [{ lineId: first.lineId, units: 3 }] })),
        )
      ).code,
    ).toBe('would-shorten');
    await promises().pinReservation(sent({ ...pin, acceptedShortages: [{ lineId: first.lineId, units: 4 }] }));
    expect([await story.heldBy(first.lineId), await story.heldBy(second.lineId)]).toEqual([
      { [lotId]: 4 },
      { [`${lotId}*`]: 6 },
    ]);
  });

  it('is undone by unpinning, and the plants float again', async () => {
    const sooner = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const chosen = await story.addLot({ units: 10, plantByOn: '2026-10-15' });
    const { lineId } = await story.order([{ units: 8 }]);
    await promises().pinReservation(sent({ lineId, supplyId: chosen, units: 5 }));
    await promises().unpinReservation(sent({ lineId, supplyId: chosen }));
    expect(await story.heldBy(lineId)).toEqual({ [sooner]: 8 });
  });

  it('of released plants takes the release back', async () => {
    const released = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await promises().releaseReservation(sent({ lineId, supplyId: released }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.lineOf(orderId, lineId)).reasons.map(({ reason, units }) => [reason, units])).toEqual([
      ['released-by-hand', 10],
    ]);
    await promises().pinReservation(sent({ lineId, supplyId: released, units: 2 }));
    expect(await story.heldBy(lineId)).toEqual({ [`${released}*`]: 2, [released]: 6 });
  });

  it('releases to another lot where one serves, and stays released after the day has rolled', async () => {
    const released = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const other = await story.addLot({ units: 10, plantByOn: '2026-10-15' });
    const { lineId } = await story.order([{ units: 8 }]);
    await promises().releaseReservation(sent({ lineId, supplyId: released }));
    nursery.clock.set('2026-05-21');
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody' }));
    expect(await story.heldBy(lineId)).toEqual({ [other]: 8 });
  });

  it('refuses another plant, one that is past its day, and one that is held', async () => {
    const other = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const wrong = await story.addLot({ plantId: other });
    const past = await story.addLot({ plantByOn: '2026-05-25' });
    const { lineId } = await story.order([{ units: 8 }]);
    expect(
      (await refusalOf(promises().pinReservation(sent({ lineId, supplyId: wrong, units: 1 })))).data?.reasons,
    ).toEqual(['not-accepted']);
    expect(
      (await refusalOf(promises().pinReservation(sent({ lineId, supplyId: past, units: 1 })))).data?.reasons,
    ).toEqual(['past-plant-by']);
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [past], reason: 'mother-stock' as const, happenedOn: '2026-05-20' }));
    expect(
      (await refusalOf(promises().pinReservation(sent({ lineId, supplyId: past, units: 1 })))).data?.reasons,
    ).toEqual(['held', 'past-plant-by']);
  });

  it('refuses more than the line needs and more than others have left', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    expect(
      await refusalOf(promises().pinReservation(sent({ lineId: first.lineId, supplyId: lotId, units: 9 }))),
    ).toEqual({ code: 'more-than-line-needs', data: { wanted: 9, open: 8 }, field: 'units' });
    await promises().pinReservation(sent({ lineId: first.lineId, supplyId: lotId, units: 8 }));
    expect(
      await refusalOf(promises().pinReservation(sent({ lineId: second.lineId, supplyId: lotId, units: 3 }))),
    ).toMatchObject({ code: 'pinned-by-others', data: { wanted: 3, available: 2 }, field: 'units' });
  });

  it('refuses to unpin or release what is not there', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    const spare = await story.addLot({ units: 10 });
    expect((await refusalOf(promises().unpinReservation(sent({ lineId, supplyId: lotId })))).code).toBe(
      'nothing-reserved',
    );
    expect((await refusalOf(promises().releaseReservation(sent({ lineId, supplyId: spare })))).code).toBe(
      'nothing-reserved',
    );
  });

  it('refuses lines of orders that are over, withdrawn lines, and ids of nobody', async () => {
    const lotId = await story.addLot({ units: 10 });
    const over = await story.order([{ units: 2 }]);
    await nursery.as('crew').orders.finishOrder(sent({ orderId: over.orderId }));
    const withdrawn = await story.order([{ units: 2 }]);
    await nursery.as('grower').orders.withdrawLine(sent({ lineId: withdrawn.lineId }));
    const attempt = (lineId: string, supplyId: string) =>
      refusalOf(promises().pinReservation(sent({ lineId, supplyId, units: 1 })));
    expect((await attempt(over.lineId, lotId)).code).toBe('order-not-open');
    expect((await attempt(withdrawn.lineId, lotId)).code).toBe('line-withdrawn');
    expect(await attempt(randomUUID(), lotId)).toMatchObject({ code: 'not-found', field: 'lineId' });
    expect(await attempt((await story.order([{ units: 2 }])).lineId, randomUUID())).toMatchObject({
      code: 'not-found',
      field: 'supplyId',
    });
  });

  it('is for growers', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    expect(
      (await refusalOf(nursery.as('crew').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 1 })))).code,
    ).toBe('not-allowed');
  });
});
