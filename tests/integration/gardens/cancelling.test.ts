import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory, type GardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
const as = () => nursery.as('grower');

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

describe('cancelling an order of which nothing was pulled', () => {
  it('is an entry of its own, and taking it back opens the order with its plants again', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const { entryId } = await as().gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    expect(await story.heldBy(lineId)).toEqual({});
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(await story.read(orderId)).toMatchObject({ state: 'open', reservedUnits: 8, shortUnits: 0 });
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
  });

  it('can be taken back once only', async () => {
    const { orderId } = await story.order([{ units: 2 }]);
    const { entryId } = await as().gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect((await refusalOf(nursery.as('grower').stock.reverseEntry(sent({ entryId })))).code).toBe('already-reversed');
  });

  it('refuses a day that is still to come', async () => {
    const { orderId } = await story.order([{ units: 1 }]);
    expect(await refusalOf(as().gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-21' })))).toMatchObject({
      code: 'day-in-future',
      field: 'happenedOn',
    });
  });
});
