import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';
import { addProtocol, evidenceOf } from './evidence.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-08-20' });
});
beforeEach(async () => {
  nursery = { ...(await server.addNursery()), close: server.close };
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const evidence = () => evidenceOf(nursery, batches.plantId);
const close = (batchId: string, writeOffCause: 'failed' | 'discarded' | null = 'failed', happenedOn = '2026-08-01') =>
  batches.propagation.closeBatch(sent({ batchId, writeOffCause, happenedOn, confirmed: true }));
const reverse = (entryId: string) => nursery.as('grower').stock.reverseEntry(sent({ entryId }));

describe('what came up', () => {
  it('is the most that a count showed, of the cells that were sown', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 40, '2026-04-01');
    await batches.count(batchId, 72, '2026-04-10');
    await batches.count(batchId, 70, '2026-04-20');
    await close(batchId);
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 72, batches: 1 });
  });

  it('is not spoken of before the batch is decided', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 40, '2026-04-01');
    expect(await evidence()).toEqual({});
    await batches.pot(batchId, 30, 30, '2026-05-01');
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 40, batches: 1 });
  });

  it('adds what had been potted before a later count', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 40, '2026-04-01');
    await batches.pot(batchId, 30, 30, '2026-05-01');
    await batches.count(batchId, 25, '2026-05-20');
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 55, batches: 1 });
  });

  it('forgets a count that was taken back', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 40, '2026-04-01');
    const { entryId } = await batches.count(batchId, 90, '2026-04-10');
    await close(batchId);
    await reverse(
      (
        await nursery.sql<{ id: string }>(`SELECT id FROM entry WHERE nursery_id = $1 AND kind = 'close'`, [
          nursery.nurseryId,
        ])
      )[0]?.id ?? '',
    );
    await reverse(entryId);
    await close(batchId);
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 40, batches: 1 });
  });

  it('knows nothing of a batch whose start was taken back', async () => {
    const { batchId, entryId } = await batches.start({ units: 50 });
    await close(batchId);
    await reverse(
      (
        await nursery.sql<{ id: string }>(`SELECT id FROM entry WHERE nursery_id = $1 AND kind = 'close'`, [
          nursery.nurseryId,
        ])
      )[0]?.id ?? '',
    );
    await reverse(entryId);
    expect(await evidence()).toEqual({});
  });

  it('is none of a batch that failed and that nobody counted, and nothing of one that was discarded', async () => {
    await close((await batches.start({ units: 60 })).batchId, 'failed');
    await close((await batches.start({ units: 30 })).batchId, 'discarded');
    expect(await evidence()).toEqual({ 'seed/emergence': { tried: 60, passed: 0, batches: 1 } });
  });

  it('counts cells that were put right as tried', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.propagation.correctBatchUnits(
      sent({ batchId, units: 90, countKind: 'counted' as const, happenedOn: '2026-03-05' }),
    );
    await batches.count(batchId, 45, '2026-04-01');
    await close(batchId);
    expect((await evidence())['seed/emergence']).toEqual({ tried: 90, passed: 45, batches: 1 });
  });

  it('of whole trays is a share of the seeds, and unknown where those are', async () => {
    const flat = await batches.start({ unit: 'tray', units: 2 });
    await batches.count(flat.batchId, 300, '2026-04-01');
    await close(flat.batchId);
    expect((await evidence())['seed/emergence']).toBeUndefined();
    const batchId = randomUUID();
    await batches.propagation.startBatch(
      sent({
        batchId,
        plantId: batches.plantId,
        sourceId: batches.sourceId,
        method: 'seed' as const,
        unit: 'tray' as const,
        units: 2,
        seedsSown: 500,
        containerId: batches.flatId,
        placeId: batches.benchId,
        happenedOn: '2026-03-01',
      }),
    );
    await batches.count(batchId, 300, '2026-04-01');
    await close(batchId);
    expect((await evidence())['seed/emergence']).toEqual({ tried: 500, passed: 300, batches: 1 });
  });

  it('waits for the second winter of a batch that is kept for one', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 20, '2026-04-01');
    await batches.pot(batchId, 20, 20, '2026-05-01');
    await batches.propagation.keepForSecondWinter(sent({ batchId, happenedOn: '2026-06-01' }));
    expect((await evidence())['seed/emergence']).toBeUndefined();
    server.clock.set('2027-08-20');
    await batches.count(batchId, 35, '2027-04-10');
    await close(batchId, 'failed', '2027-06-01');
    server.clock.set('2026-08-20');
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 55, batches: 1 });
  });

  it('is decided when the long wait of its protocol is over', async () => {
    const versionId = await addProtocol(nursery, { plantId: batches.plantId });
    const { batchId } = await batches.start({ units: 100, on: '2026-07-01' });
    await nursery.sql('UPDATE batch SET protocol_version_id = $2 WHERE id = $1', [batchId, versionId]);
    await batches.count(batchId, 40, '2026-07-21');
    // 30 days after the first came up are over on 21 August, the day after today.
    expect(await evidence()).toEqual({});
    server.clock.set('2026-08-21');
    expect((await evidence())['seed/emergence']).toEqual({ tried: 100, passed: 40, batches: 1 });
    server.clock.set('2026-08-20');
  });

  it('is kept apart by the name of the protocol, and added up over batches', async () => {
    const scarified = await addProtocol(nursery, { plantId: batches.plantId, label: 'scarified' });
    for (const [units, up, version] of [
      [100, 90, scarified],
      [40, 30, scarified],
      [100, 15, null],
    ] as const) {
      const { batchId } = await batches.start({ units });
      await nursery.sql('UPDATE batch SET protocol_version_id = $2 WHERE id = $1', [batchId, version]);
      await batches.count(batchId, up, '2026-04-01');
      await close(batchId);
    }
    const shown = await evidence();
    expect([shown['seed/emergence/scarified'], shown['seed/emergence']]).toEqual([
      { tried: 140, passed: 120, batches: 2 },
      { tried: 100, passed: 15, batches: 1 },
    ]);
  });

  it('is rooting where pieces were stuck', async () => {
    const { batchId } = await batches.start({ method: 'cutting', unit: 'piece', units: 50, containerId: null });
    await batches.count(batchId, 41, '2026-04-01');
    await close(batchId);
    expect((await evidence())['cutting/rooting']).toEqual({ tried: 50, passed: 41, batches: 1 });
  });
});

describe('what was pricked out', () => {
  it('is what was potted of all that had come up, once the batch is closed', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 80, '2026-04-01');
    await batches.pot(batchId, 70, 66, '2026-05-01');
    await close(batchId);
    expect((await evidence())['seed/pricking-out']).toEqual({ tried: 80, passed: 66, batches: 1 });
  });

  it('is, while it goes on, what was potted of those that were potted or lost', async () => {
    const { batchId } = await batches.start({ units: 100 });
    await batches.count(batchId, 80, '2026-04-01');
    await batches.pot(batchId, 40, 38, '2026-05-01');
    await batches.propagation.loseFromBatch(
      sent({ batchId, units: 5, cause: 'rot' as const, happenedOn: '2026-05-02' }),
    );
    expect((await evidence())['seed/pricking-out']).toEqual({ tried: 45, passed: 38, batches: 1 });
  });

  it('never passes more than were tried: two plants of a cell are one that passed', async () => {
    const { batchId } = await batches.start({ units: 50 });
    await batches.count(batchId, 50, '2026-04-01');
    await batches.pot(batchId, 50, 90, '2026-05-01');
    expect((await evidence())['seed/pricking-out']).toEqual({ tried: 50, passed: 50, batches: 1 });
  });

  it('is not known of a batch that nobody counted', async () => {
    const { batchId } = await batches.start({ units: 50 });
    await batches.pot(batchId, 50, 42, '2026-05-01', { firstAlive: '2026-04' });
    const shown = await evidence();
    expect([shown['seed/emergence'], shown['seed/pricking-out']]).toEqual([
      { tried: 50, passed: 42, batches: 1 },
      undefined,
    ]);
  });
});
