import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('why a line holds its plants', () => {
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
  const explain = (lineId: string) => nursery.as('viewer').promises.explainLine({ lineId });

  it('is told by what else is free and when that must leave its pot', async () => {
    const soon = await story.addLot({ units: 5, plantByOn: '2026-06-15' });
    await story.addLot({ units: 5 });
    const { lineId } = await story.order([{ units: 4 }]);
    expect(await explain(lineId)).toMatchObject({
      linesBefore: 0,
      rows: [
        { supplyId: soon, units: 4, reason: 'leaves-first', plantByOn: '2026-06-15', instead: { plantByOn: null } },
      ],
    });
  });

  it('is told by whom else the plants that must leave sooner are promised to', async () => {
    await story.addLot({ units: 5, plantByOn: '2026-06-15' });
    await story.addLot({ units: 5 });
    const first = await story.order([{ units: 5 }]);
    const second = await story.order([{ units: 5 }], { dueOn: '2026-06-10' });
    expect(await explain(second.lineId)).toMatchObject({
      linesBefore: 1,
      rows: [{ reason: 'rest-is-promised', sooner: [{ plantByOn: '2026-06-15', orders: [first.code] }] }],
    });
  });

  it('is that somebody tied them', async () => {
    await story.addLot({ units: 5, plantByOn: '2026-06-15' });
    const other = await story.addLot({ units: 5 });
    const { lineId } = await story.order([{ units: 4 }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: other, units: 4 }));
    expect((await explain(lineId)).rows).toMatchObject([{ supplyId: other, units: 4, reason: 'pinned' }]);
  });

  it('is not asked of a line that is over', async () => {
    const { orderId, lineId } = await story.order([{ units: 4 }]);
    await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    expect((await refusalOf(explain(lineId))).code).toBe('order-not-open');
  });
});
