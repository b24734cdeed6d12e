import { randomUUID } from 'node:crypto';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from './batches.ts';

const opened: { database: TestDatabase; nursery: TestNursery }[] = [];
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;
let batchId: string;
let lineId: string;

// Each story begins anew: orders of one would take what another grows.
beforeEach(async () => {
  const database = await createDatabase();
  nursery = await openNursery(database);
  opened.push({ database, nursery });
  batches = await batchesOf(nursery);
  ({ batchId } = await batches.start({ units: 100, cautiousUnits: 60, readyOn: '2026-06-15' }));
  await batches.count(batchId, 80, '2026-04-10');
  const { clients, orders } = nursery.as('grower');
  const clientId = randomUUID();
  lineId = randomUUID();
  await clients.addClient(sent({ clientId, name: 'Fen Hollow' }));
  await orders.addOrder(
    sent({
      orderId: randomUUID(),
      clientId,
      siteId: null,
      kind: 'pickup' as const,
      dueOn: '2026-06-20',
      lines: [{ lineId, plantId: batches.plantId, containerId: batches.potId, units: 50 }],
    }),
  );
});
afterAll(async () => {
  for (const { nursery: used, database } of opened) {
    await used.close();
    await database.drop();
  }
});

const held = async () =>
  Object.fromEntries(
    (
      await nursery.sql<{ supply: string; units: number }>(
        'SELECT supply_id::text AS supply, units FROM reservation WHERE nursery_id = $1 AND line_id = $2',
        [nursery.nurseryId, lineId],
      )
    ).map((row) => [row.supply, row.units]),
  );

describe('what is promised from a batch', () => {
  it('is shown on its page', async () => {
    expect(await held()).toEqual({ [batchId]: 50 });
    expect((await batches.page(batchId)).reservations).toMatchObject([
      { clientName: 'Fen Hollow', dueOn: '2026-06-20', units: 50 },
    ]);
  });

  it('goes with the plants into their pots', async () => {
    const { lotId } = await batches.pot(batchId, 40, 40, '2026-05-10');
    const now = await held();
    expect(now[lotId]).toBeGreaterThan(0);
    expect(Object.values(now).reduce((sum, units) => sum + units, 0)).toBe(50);
    expect(now[batchId] ?? 0).toBeLessThanOrEqual((await batches.page(batchId)).cautiousUnits);
  });

  it('gives way to a loss and leaves the line short', async () => {
    await batches.propagation.loseFromBatch(
      sent({ batchId, units: 70, cause: 'failed' as const, happenedOn: '2026-05-12' }),
    );
    expect(await held()).toEqual({ [batchId]: 30 });
  });

  it('ends with the batch', async () => {
    await batches.propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn: '2026-05-12' }));
    expect(await held()).toEqual({});
  });

  it('comes back when the closing is taken back', async () => {
    const { entryId } = await batches.propagation.closeBatch(
      sent({ batchId, writeOffCause: 'failed' as const, happenedOn: '2026-05-12' }),
    );
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(await held()).toEqual({ [batchId]: 50 });
  });
});
