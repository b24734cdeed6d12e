import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

describe('when less is left than was promised', () => {
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

  it('the line promised last gives its plants up, and its shortage shows', async () => {
    const lotId = await story.addLot({ units: 20 });
    const first = await story.order([{ units: 8 }]);
    const last = await story.order([{ units: 8 }]);
    await story.lose(lotId, 10);
    expect([await story.heldBy(first.lineId), await story.heldBy(last.lineId)]).toEqual([
      { [lotId]: 8 },
      { [lotId]: 2 },
    ]);
    const { rows } = await nursery.as('viewer').promises.listShort({});
    expect(rows.map(({ lineId, shortUnits }) => [lineId, shortUnits])).toEqual([[last.lineId, 6]]);
  });

  it('what can be filled from another lot is filled in the same entry', async () => {
    const lotId = await story.addLot({ units: 20, plantByOn: '2026-06-15' });
    const { lineId } = await story.order([{ units: 15 }]);
    const other = await story.addLot({ units: 6, plantByOn: '2026-10-15' });
    await story.lose(lotId, 12);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8, [other]: 6 });
  });

  it('pinned units outlast floating ones of an earlier turn', async () => {
    const lotId = await story.addLot({ units: 20 });
    const early = await story.order([{ units: 8 }]);
    const late = await story.order([{ units: 8 }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId: late.lineId, supplyId: lotId, units: 8 }));
    await story.lose(lotId, 10);
    expect([await story.heldBy(early.lineId), await story.heldBy(late.lineId)]).toEqual([
      { [lotId]: 2 },
      { [`${lotId}*`]: 8 },
    ]);
  });

  it('even pinned units go, last turn first, when the plants are gone', async () => {
    const lotId = await story.addLot({ units: 20 });
    const orders = [await story.order([{ units: 8 }]), await story.order([{ units: 8 }])];
    for (const { orderId } of orders) await nursery.as('grower').gardens.issuePullList(sent({ orderId }));
    await story.lose(lotId, 15);
    expect(await Promise.all(orders.map(({ lineId }) => story.heldBy(lineId)))).toEqual([{ [`${lotId}*`]: 5 }, {}]);
  });

  it('a held lot promises nothing, pinned or not, and is promised again when it is released', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await nursery.as('grower').gardens.issuePullList(sent({ orderId }));
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector' as const, happenedOn: today }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.lineOf(orderId, lineId)).reasons).toEqual([
      { reason: 'held', units: 20, codes: [expect.any(String)], day: null },
    ]);
    await nursery
      .as('grower')
      .stock.releaseLot(
        sent({ lotId, reason: 'inspector' as const, releaseReason: 'The inspector was here.', happenedOn: today }),
      );
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
  });

  it('plants brought to a quarantine place are promised to nobody', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await nursery
      .as('crew')
      .stock.moveMany(sent({ lotIds: [lotId], toPlaceId: story.quarantineId, happenedOn: today }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.lineOf(orderId, lineId)).reasons.map(({ reason, units }) => [reason, units])).toEqual([
      ['held', 20],
    ]);
  });

  it('a lot that turns out to be another plant gives its promises up', async () => {
    const lotId = await story.addLot({ units: 20 });
    const other = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const { lineId } = await story.order([{ units: 8 }]);
    await nursery
      .as('grower')
      .stock.reIdentifyLot(
        sent({ lotId, plantId: other, happenedOn: today, note: 'Leaves are opposite and the stand is wet.' }),
      );
    expect(await story.heldBy(lineId)).toEqual({});
  });

  it('splitting a lot carries its pinned units to the new lot as far as they no longer fit', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 18 }]);
    await nursery.as('grower').gardens.issuePullList(sent({ orderId }));
    const newLotId = randomUUID();
    await nursery
      .as('grower')
      .stock.splitLot(
        sent({ lotId, into: [{ lotId: newLotId, placeId: story.placeId, units: 12 }], happenedOn: today }),
      );
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 8, [`${newLotId}*`]: 10 });
  });

  it('an entry taken back gives the plants back to the line that lost them', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    const { entryId } = await story.lose(lotId, 6);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 4 });
    await nursery.as('crew').stock.reverseEntry(sent({ entryId }));
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
  });
});
