import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';

describe('promises on growing batches', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  let batches: Awaited<ReturnType<typeof batchesOf>>;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    batches = await batchesOf(nursery, { code: 'ASIN', name: 'Asclepias incarnata' });
    return () => nursery.close();
  });
  afterAll(() => database.drop());
  const orderOfBatch = (units: number) =>
    story.order([{ units, plantId: batches.plantId, containerId: batches.potId }], { dueOn: '2026-06-20' });

  it('go with the plants to the lot that was potted, pinned ones as pinned', async () => {
    const { batchId } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    const { lineId } = await orderOfBatch(30);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: batchId, units: 10 }));
    expect(await story.heldBy(lineId)).toEqual({ [`${batchId}*`]: 10, [batchId]: 20 });
    await batches.count(batchId, 60, '2026-04-10');
    const { lotId } = await batches.pot(batchId, 100, 60, '2026-05-15');
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 10, [lotId]: 20 });
  });

  it('are no more than the cautious yield, and are given up when the batch fails', async () => {
    const { batchId } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    const { orderId, lineId } = await orderOfBatch(50);
    expect(await story.heldBy(lineId)).toEqual({ [batchId]: 40 });
    await batches.propagation.closeBatch(sent({ batchId, happenedOn: '2026-05-20', writeOffCause: 'failed' as const }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.read(orderId)).shortUnits).toBe(50);
  });

  it('cannot be pulled before they are potted', async () => {
    const { batchId, code } = await batches.start({ units: 100, cautiousUnits: 40, readyOn: '2026-06-15' });
    const { orderId, lineId } = await orderOfBatch(30);
    const list = await nursery.as('viewer').gardens.readPullList({ orderId });
    expect([list.rows, list.notPotted.map(({ batchCode, units, readyOn }) => ({ batchCode, units, readyOn }))]).toEqual(
      [[], [{ batchCode: code, units: 30, readyOn: '2026-06-15' }]],
    );
    expect(await refusalOf(story.pull(orderId, [{ lineId, lotId: batchId, units: 1 }]))).toMatchObject({
      code: 'not-found',
      field: 'lotId',
    });
  });

  it('and on lots are never made twice, however many people order at once', async () => {
    const lotId = await story.addLot({ units: 25 });
    const orders = await Promise.all(Array.from({ length: 12 }, () => story.order([{ units: 4 }])));
    const held: number[] = [];
    for (const { lineId } of orders) held.push((await story.heldBy(lineId))[lotId] ?? 0);
    expect(held.sort((a, b) => b - a)).toEqual([4, 4, 4, 4, 4, 4, 1, 0, 0, 0, 0, 0]);
    expect(new Set(orders.map(({ code }) => code)).size).toBe(12);
    const ranks = await nursery.sql<{ rank: number }>(
      'SELECT rank FROM order_line WHERE nursery_id = $1 ORDER BY rank',
      [nursery.nurseryId],
    );
    expect(ranks.map(({ rank }) => rank)).toEqual(Array.from({ length: 12 }, (_, at) => at + 1));
  });

  it('survive people who pull, lose and order the same lot at once', async () => {
    const lotId = await story.addLot({ units: 60 });
    const { orderId, lineId } = await story.order([{ units: 30 }]);
    await Promise.all(
      Array.from({ length: 15 }, (_, at): Promise<unknown> => {
        if (at % 3 === 0) return story.pull(orderId, [{ lineId, lotId, units: 2 }]);
        if (at % 3 === 1) return story.lose(lotId, 3);
        return nursery
          .as('grower')
          .orders.addLine(
            sent({ orderId, lineId: randomUUID(), plantId: story.plantId, containerId: story.containerId, units: 4 }),
          );
      }),
    );
    expect(await story.unitsOf(lotId)).toBe(60 - 5 * 2 - 5 * 3);
    expect(await story.read(orderId)).toMatchObject({
      wantedUnits: 50,
      stagedUnits: 10,
      reservedUnits: 35,
      shortUnits: 5,
    });
  });
});
