import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

describe('an order whose only line was withdrawn', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  beforeAll(async () => {
    database = await createDatabase();
  });
  afterAll(() => database.drop());
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    return () => nursery.close();
  });

  it('is open again when its cancelling is taken back', async () => {
    const { orderId, lineId } = await story.order([{ units: 5 }]);
    await nursery.as('grower').orders.withdrawLine(sent({ lineId }));
    const { entryId } = await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: today }));
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect((await story.read(orderId)).state).toBe('open');
  });

  it('gives back the plants that stand staged for it once their planting was taken back, and plants none of them', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 5 }]);
    await story.pull(orderId, [{ lineId, lotId, placeId: story.placeId, units: 3 }]);
    const crew = nursery.as('crew').gardens;
    const { entryId } = await crew.plantOrder(
      sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, units: 3 }] }),
    );
    await nursery.as('grower').orders.withdrawLine(sent({ lineId }));
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(
      await refusalOf(crew.plantOrder(sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, units: 3 }] }))),
    ).toMatchObject({ code: 'line-withdrawn' });
    await crew.returnFromOrder(
      sent({ orderId, happenedOn: today, placeId: story.placeId, rows: [{ lineId, lotId, returnedUnits: 3 }] }),
    );
    expect(await story.unitsOf(lotId)).toBe(20);
  });
});
