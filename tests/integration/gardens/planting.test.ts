import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

describe('planting, handing over and bringing back', () => {
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
  const by = (role: 'grower' | 'crew' | 'viewer' = 'crew') => nursery.as(role);

  /** An order for ten of which eight are pulled. */
  async function pulled(kind: 'installation' | 'pickup' = 'installation') {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 10 }], { kind });
    await story.pull(orderId, [{ lineId, lotId, units: 8 }]);
    return { lotId, orderId, lineId };
  }
  type Pulled = Awaited<ReturnType<typeof pulled>>;
  const plant = (
    { orderId, lineId, lotId }: Pulled,
    row: {
      units: number;
      extra?: { from: 'place'; placeId: string; units: number } | { from: 'found'; units: number };
    },
  ) => by().gardens.plantOrder(sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, ...row }] }));
  const bringBack = (
    { orderId, lineId, lotId }: Pulled,
    row: { returnedUnits?: number; lostUnits?: number },
    more: { placeId?: string; cause?: 'mishandled' } = {},
  ) => by().gardens.returnFromOrder(sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, ...row }], ...more }));

  it('a part at a time leaves the rest staged and the line filled', async () => {
    const order = await pulled();
    await plant(order, { units: 3 });
    expect(await story.read(order.orderId)).toMatchObject({
      deliveredUnits: 3,
      stagedUnits: 5,
      reservedUnits: 2,
      shortUnits: 0,
    });
  });

  it('more than was pulled takes the extra from the lot at its place, in one entry', async () => {
    const order = await pulled();
    const { entryId } = await plant(order, { units: 8, extra: { from: 'place', placeId: story.placeId, units: 4 } });
    expect(await story.unitsOf(order.lotId)).toBe(8);
    const page = await story.read(order.orderId);
    expect(page).toMatchObject({ deliveredUnits: 12, stagedUnits: 0, reservedUnits: 0, shortUnits: 0 });
    expect(page.entries.filter(({ kind }) => kind === 'plant').map(({ id, units }) => [id, units])).toEqual([
      [entryId, 12],
    ]);
  });

  it('more than was there books the extra as found', async () => {
    const order = await pulled();
    await plant(order, { units: 8, extra: { from: 'found', units: 2 } });
    expect(await story.unitsOf(order.lotId)).toBe(12);
    expect(await story.read(order.orderId)).toMatchObject({ deliveredUnits: 10 });
  });

  it('shows at the site by bed, plant and lot', async () => {
    const bedId = randomUUID();
    await by('grower').clients.addBed(sent({ bedId, siteId: story.siteId, name: 'By the gate' }));
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId, code } = await story.order([{ units: 10, bedId }]);
    await story.pull(orderId, [{ lineId, lotId, units: 8 }]);
    await plant({ orderId, lineId, lotId }, { units: 6 });
    const { entryId } = await plant({ orderId, lineId, lotId }, { units: 2 });
    const site = await by('viewer').gardens.readSite({ siteId: story.siteId });
    expect(site.planted).toEqual([
      expect.objectContaining({
        bedId,
        bedName: 'By the gate',
        orderCode: code,
        lotId,
        scientificName: 'Asclepias tuberosa',
        units: 8,
        lastPlantedOn: today,
      }),
    ]);
    expect(site.beds.map(({ plantedUnits }) => plantedUnits)).toEqual([8]);
    await nursery.as('crew').stock.reverseEntry(sent({ entryId }));
    expect((await by('viewer').gardens.readSite({ siteId: story.siteId })).planted.map(({ units }) => units)).toEqual([
      6,
    ]);
  });

  it('taken back after the order was finished opens it again', async () => {
    const order = await pulled();
    const { entryId } = await plant(order, { units: 8 });
    await by().orders.finishOrder(sent({ orderId: order.orderId }));
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(await story.read(order.orderId)).toMatchObject({
      state: 'open',
      stagedUnits: 8,
      reservedUnits: 2,
      deliveredUnits: 0,
    });
  });

  it('cannot be taken back once the order was cancelled', async () => {
    const order = await pulled();
    const { entryId } = await plant(order, { units: 8 });
    await by('grower').gardens.cancelOrder(sent({ orderId: order.orderId, happenedOn: today }));
    expect(await refusalOf(nursery.as('grower').stock.reverseEntry(sent({ entryId })))).toMatchObject({
      code: 'order-not-open',
      field: 'entryId',
    });
  });

  it('is refused of more than is staged, or than stands at the place the extra comes from', async () => {
    const order = await pulled();
    expect(await refusalOf(plant(order, { units: 9 }))).toMatchObject({
      code: 'not-enough-staged',
      data: { wanted: 9, staged: 8 },
      field: 'rows.0.units',
    });
    expect(
      await refusalOf(plant(order, { units: 0, extra: { from: 'place', placeId: story.placeId, units: 13 } })),
    ).toMatchObject({ code: 'not-enough-units', data: { wanted: 13, available: 12 }, field: 'rows.0.extra.units' });
    expect(await refusalOf(plant(order, { units: 0 }))).toMatchObject({ code: 'invalid-input', field: 'rows.0.units' });
    expect(
      await refusalOf(plant(order, { units: 0, extra: { from: 'place', placeId: randomUUID(), units: 1 } })),
    ).toMatchObject({ code: 'not-found', field: 'placeId' });
  });

  it('names the very row whose extra is not there', async () => {
    const order = await pulled();
    const rows = [
      { lineId: order.lineId, lotId: order.lotId, units: 3 },
      {
        lineId: order.lineId,
        lotId: order.lotId,
        units: 0,
        extra: { from: 'place' as const, placeId: story.placeId, units: 13 },
      },
    ];
    expect(
      await refusalOf(by().gardens.plantOrder(sent({ orderId: order.orderId, happenedOn: today, rows }))),
    ).toMatchObject({ code: 'not-enough-units', field: 'rows.1.extra.units' });
  });

  it('is refused of a lot that was held since, and of a plant the line does not take', async () => {
    const order = await pulled();
    const wrong = await story.addLot({ plantId: await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' }) });
    expect(
      (await refusalOf(plant({ ...order, lotId: wrong }, { units: 0, extra: { from: 'found', units: 1 } }))).code,
    ).toBe('not-accepted');
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [order.lotId], reason: 'inspector' as const, happenedOn: today }));
    expect((await refusalOf(plant(order, { units: 1 }))).code).toBe('lot-held');
    expect(
      (
        await refusalOf(
          by().gardens.handOver(
            sent({
              orderId: order.orderId,
              happenedOn: today,
              rows: [{ lineId: order.lineId, lotId: order.lotId, units: 1 }],
            }),
          ),
        )
      ).code,
    ).toBe('lot-held');
  });

  it('is for orders with a site; without one the client fetches the plants', async () => {
    const order = await pulled('pickup');
    expect(await refusalOf(plant(order, { units: 8 }))).toMatchObject({
      code: 'wrong-order-kind',
      data: { kind: 'pickup' },
    });
    await by().gardens.handOver(
      sent({
        orderId: order.orderId,
        happenedOn: today,
        rows: [{ lineId: order.lineId, lotId: order.lotId, units: 8 }],
      }),
    );
    expect(await story.read(order.orderId)).toMatchObject({ deliveredUnits: 8, stagedUnits: 0, reservedUnits: 2 });
    const [account] = await nursery.sql<{ sold: number }>(
      `SELECT sum(from_units)::int AS sold FROM movement WHERE nursery_id = $1 AND to_account_id = account_key('outside', 'outside', 'sold')`,
      [nursery.nurseryId],
    );
    expect(account?.sold).toBe(8);
  });

  it('handing over can be taken back', async () => {
    const order = await pulled('pickup');
    const { entryId } = await by().gardens.handOver(
      sent({
        orderId: order.orderId,
        happenedOn: today,
        rows: [{ lineId: order.lineId, lotId: order.lotId, units: 8 }],
      }),
    );
    await nursery.as('crew').stock.reverseEntry(sent({ entryId }));
    expect(await story.read(order.orderId)).toMatchObject({ deliveredUnits: 0, stagedUnits: 8 });
  });

  it('handing over is refused of more than is staged', async () => {
    const order = await pulled('pickup');
    expect(
      (
        await refusalOf(
          by().gardens.handOver(
            sent({
              orderId: order.orderId,
              happenedOn: today,
              rows: [{ lineId: order.lineId, lotId: order.lotId, units: 9 }],
            }),
          ),
        )
      ).code,
    ).toBe('not-enough-staged');
  });

  it('what comes back keeps its lot and clocks and waits in quarantine, where it is promised to nobody', async () => {
    const order = await pulled();
    const [before] = await nursery.sql(
      `SELECT confined_on, container_on, code FROM lot WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, order.lotId],
    );
    await bringBack(order, { returnedUnits: 8 });
    const places = await nursery.sql<{ place_id: string; units: number }>(
      `SELECT place_id, units FROM account WHERE nursery_id = $1 AND lot_id = $2 AND kind = 'place' AND units > 0`,
      [nursery.nurseryId, order.lotId],
    );
    expect(Object.fromEntries(places.map(({ place_id, units }) => [place_id, units]))).toEqual({
      [story.placeId]: 12,
      [story.quarantineId]: 8,
    });
    expect(
      await nursery.sql(`SELECT confined_on, container_on, code FROM lot WHERE nursery_id = $1 AND id = $2`, [
        nursery.nurseryId,
        order.lotId,
      ]),
    ).toEqual([before]);
    expect(await story.heldBy(order.lineId)).toEqual({ [order.lotId]: 10 });
    const bigger = await story.order([{ units: 10 }]);
    expect(await story.heldBy(bigger.lineId)).toEqual({ [order.lotId]: 2 });
  });

  it('what was knocked out of its pots is lost for a reason, in the same entry', async () => {
    const order = await pulled();
    expect(await refusalOf(bringBack(order, { returnedUnits: 5, lostUnits: 3 }))).toMatchObject({
      code: 'cause-needed',
      field: 'cause',
    });
    const { entryId } = await bringBack(
      order,
      { returnedUnits: 5, lostUnits: 3 },
      { placeId: story.placeId, cause: 'mishandled' },
    );
    expect(await story.unitsOf(order.lotId)).toBe(17);
    expect(
      (
        await nursery.sql<{ cause: string }>('SELECT cause FROM entry WHERE nursery_id = $1 AND id = $2', [
          nursery.nurseryId,
          entryId,
        ])
      )[0]?.cause,
    ).toBe('mishandled');
    await nursery.as('crew').stock.reverseEntry(sent({ entryId }));
    expect(await story.read(order.orderId)).toMatchObject({ stagedUnits: 8, reservedUnits: 2 });
  });

  it('bringing back is refused of more than is staged, of nothing, to a closed place, or where no quarantine is', async () => {
    const order = await pulled();
    expect((await refusalOf(bringBack(order, { returnedUnits: 6, lostUnits: 3 }, { cause: 'mishandled' }))).code).toBe(
      'not-enough-staged',
    );
    expect((await refusalOf(bringBack(order, {}))).code).toBe('invalid-input');
    await nursery.sql(
      `UPDATE place SET closed_until_at = '2026-05-22T00:00Z', closed_reason = 'treated' WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, story.placeId],
    );
    expect((await refusalOf(bringBack(order, { returnedUnits: 1 }, { placeId: story.placeId }))).code).toBe(
      'place-closed',
    );
    await nursery.sql(`UPDATE place SET retired_at = now() WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      story.quarantineId,
    ]);
    expect(await refusalOf(bringBack(order, { returnedUnits: 1 }))).toMatchObject({
      code: 'no-quarantine-place',
      field: 'placeId',
    });
  });

  it('a line whose plants were lost on the way is short again and filled from what is free', async () => {
    const order = await pulled();
    await bringBack(order, { lostUnits: 8 }, { cause: 'mishandled' });
    expect(await story.heldBy(order.lineId)).toEqual({ [order.lotId]: 10 });
  });
});
