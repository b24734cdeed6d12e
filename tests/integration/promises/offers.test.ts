import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('what could go where', () => {
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
  const promises = () => nursery.as('viewer').promises;

  it('offers a line what serves it, the plants that must leave their pots first going first', async () => {
    const never = await story.addLot({ units: 9 });
    const later = await story.addLot({ units: 8, plantByOn: '2026-10-15' });
    const sooner = await story.addLot({ units: 7, plantByOn: '2026-06-15' });
    await story.addLot({ units: 6, plantByOn: '2026-05-25' });
    const { lineId } = await story.order([{ units: 10 }]);
    const { on, offers, reasons } = await promises().offersFor({ lineId });
    expect(on).toBe('2026-06-01');
    expect(
      offers.map(({ supplyId, onHandUnits, reservedUnits, freeUnits, leaveByOn }) => ({
        supplyId,
        onHandUnits,
        reservedUnits,
        freeUnits,
        leaveByOn,
      })),
    ).toEqual([
      { supplyId: sooner, onHandUnits: 7, reservedUnits: 7, freeUnits: 0, leaveByOn: '2026-06-15' },
      { supplyId: later, onHandUnits: 8, reservedUnits: 3, freeUnits: 5, leaveByOn: '2026-10-15' },
      { supplyId: never, onHandUnits: 9, reservedUnits: 0, freeUnits: 9, leaveByOn: null },
    ]);
    expect(reasons.map(({ reason, units }) => [reason, units])).toEqual([['past-plant-by', 6]]);
  });

  it('offers what was released from the line, and says so', async () => {
    const lotId = await story.addLot({ units: 9 });
    const { lineId } = await story.order([{ units: 2 }]);
    await nursery.as('grower').promises.releaseReservation(sent({ lineId, supplyId: lotId }));
    expect(
      (await promises().offersFor({ lineId })).offers.map(({ supplyId, releasedByHand }) => [supplyId, releasedByHand]),
    ).toEqual([[lotId, true]]);
  });

  it('answers for an item on a day that nobody has ordered yet, with the client’s lead', async () => {
    await nursery.as('grower').clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 10 }));
    const lotId = await story.addLot({ units: 7, plantByOn: '2026-06-15' });
    const ask = { plantId: story.plantId, containerId: story.containerId, clientId: story.clientId };
    expect(
      (await promises().offersFor({ ...ask, on: '2026-06-05' })).offers.map(({ supplyId, leaveByOn }) => [
        supplyId,
        leaveByOn,
      ]),
    ).toEqual([[lotId, '2026-06-05']]);
    const late = await promises().offersFor({ ...ask, on: '2026-06-06' });
    expect([late.offers, late.reasons.map(({ reason, units, day }) => ({ reason, units, day }))]).toEqual([
      [],
      [{ reason: 'past-plant-by', units: 7, day: '2026-06-05' }],
    ]);
  });

  it('answers for an item with what others hold of it', async () => {
    await story.addLot({ units: 7 });
    const { code } = await story.order([{ units: 5 }]);
    const { reasons } = await promises().offersFor({
      plantId: story.plantId,
      containerId: story.containerId,
      on: '2026-06-01',
      untreated: true,
    });
    expect(reasons).toEqual([{ reason: 'promised', units: 5, codes: [code], day: null }]);
  });

  it('tells of a lot every line that takes its plants, what each still lacks, and why one is not served', async () => {
    const lotId = await story.addLot({ units: 7, plantByOn: '2026-06-15' });
    const first = await story.order([{ units: 5 }]);
    const second = await story.order([{ units: 5 }]);
    const late = await story.order([{ units: 5 }], { dueOn: '2026-07-01' });
    const demand = await promises().demandFor({ supplyId: lotId });
    expect(demand).toMatchObject({ onHandUnits: 7, reservedUnits: 7, freeUnits: 0, plantByOn: '2026-06-15' });
    expect(
      demand.lines.map(({ lineId, reservedHereUnits, shortUnits, serves, reasons }) => ({
        lineId,
        reservedHereUnits,
        shortUnits,
        serves,
        reasons,
      })),
    ).toEqual([
      { lineId: first.lineId, reservedHereUnits: 5, shortUnits: 0, serves: true, reasons: [] },
      { lineId: second.lineId, reservedHereUnits: 2, shortUnits: 3, serves: true, reasons: [] },
      { lineId: late.lineId, reservedHereUnits: 0, shortUnits: 5, serves: false, reasons: ['past-plant-by'] },
    ]);
  });

  it('says of a lot which short orders could take it if their day, conditions or plants changed, and how many that would save', async () => {
    const sister = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const stranger = await story.addPlant({ name: 'Liatris aspera', code: 'LIAS' });
    const lotId = await story.addLot({ units: 9, plantByOn: '2026-06-15' });
    const late = await story.order([{ units: 3 }], { dueOn: '2026-06-20' });
    const zoned = await story.order([{ units: 4, seedZone: 'zone 4' }]);
    const other = await story.order([{ units: 5, plantId: sister }]);
    const both = await story.order([{ units: 6, plantId: sister, seedZone: 'zone 4' }], { dueOn: '2026-06-21' });
    await story.order([{ units: 7, plantId: stranger }]);
    const { lines } = await promises().demandFor({ supplyId: lotId });
    expect(lines.map(({ lineId, serves, savedUnits, needs }) => ({ lineId, serves, savedUnits, needs }))).toEqual([
      {
        lineId: late.lineId,
        serves: false,
        savedUnits: 3,
        needs: { alternative: false, conditions: [], fromOn: null, untilOn: '2026-06-15', isTooLate: false },
      },
      {
        lineId: zoned.lineId,
        serves: false,
        savedUnits: 4,
        needs: {
          alternative: false,
          conditions: ['provenance-unknown'],
          fromOn: null,
          untilOn: null,
          isTooLate: false,
        },
      },
      {
        lineId: both.lineId,
        serves: false,
        savedUnits: 6,
        needs: {
          alternative: true,
          conditions: ['provenance-unknown'],
          fromOn: null,
          untilOn: '2026-06-15',
          isTooLate: false,
        },
      },
      {
        lineId: other.lineId,
        serves: false,
        savedUnits: 5,
        needs: { alternative: true, conditions: [], fromOn: null, untilOn: null, isTooLate: false },
      },
    ]);
  });

  it('says of a lot whose last day is over that no day of an order would do', async () => {
    const lotId = await story.addLot({ units: 9, plantByOn: '2026-05-01' });
    const { lineId } = await story.order([{ units: 3 }]);
    expect((await promises().demandFor({ supplyId: lotId })).lines).toMatchObject([
      { lineId, savedUnits: 0, needs: { untilOn: null, isTooLate: true } },
    ]);
  });

  it('lists every open line that is short, the nearest day first, by pages', async () => {
    await story.addLot({ units: 2 });
    await story.order([{ units: 2 }], { dueOn: '2026-05-30' });
    const later = await story.order([{ units: 4 }], { dueOn: '2026-07-01' });
    const sooner = await story.order([{ units: 3 }], { dueOn: '2026-06-01' });
    const cancelled = await story.order([{ units: 3 }], { dueOn: '2026-06-01' });
    await nursery.as('grower').gardens.cancelOrder(sent({ orderId: cancelled.orderId, happenedOn: '2026-05-20' }));
    const short = await promises().listShort({});
    expect(short.rows.map(({ orderId, shortUnits, filledUnits }) => ({ orderId, shortUnits, filledUnits }))).toEqual([
      { orderId: sooner.orderId, shortUnits: 3, filledUnits: 0 },
      { orderId: later.orderId, shortUnits: 4, filledUnits: 0 },
    ]);
    const second = await promises().listShort({ page: 2, perPage: 1 });
    expect([second.total, second.rows.map(({ orderId }) => orderId)]).toEqual([2, [later.orderId]]);
  });

  it('another nursery’s lot, line and order answer as those of nobody', async () => {
    const other = await openNursery(database);
    const theirs = await gardenStory(other);
    const lotId = await theirs.addLot({ units: 7 });
    const { orderId, lineId } = await theirs.order([{ units: 5 }]);
    const attempts = [
      () => promises().offersFor({ lineId }),
      () => promises().demandFor({ supplyId: lotId }),
      () => promises().whatIf({ kind: 'move-order', orderId, dueOn: '2026-07-01' }),
      () =>
        promises().offersFor({
          plantId: story.plantId,
          containerId: story.containerId,
          on: '2026-06-01',
          siteId: theirs.siteId,
        }),
      () =>
        promises().offersFor({
          plantId: story.plantId,
          containerId: story.containerId,
          on: '2026-06-01',
          clientId: theirs.clientId,
        }),
      () => nursery.as('viewer').promises.readOrder({ orderId }),
      () => nursery.as('owner').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' })),
      () => nursery.as('owner').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 1 })),
      () =>
        nursery
          .as('owner')
          .orders.addOrder(
            sent({ orderId: randomUUID(), clientId: theirs.clientId, kind: 'pickup' as const, dueOn: '2026-06-01' }),
          ),
    ];
    for (const attempt of attempts) expect((await refusalOf(attempt())).code).toBe('not-found');
    await other.close();
  });
});
