import { afterAll, beforeAll, expect, it } from 'vitest';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import { rebuildEvidence } from '../../../apps/server/src/cli/rebuild-evidence.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-08-20' });
  nursery = { ...(await server.addNursery()), close: server.close };
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const kept = async (batchId: string) =>
  (
    await nursery.sql<Record<string, unknown>>(
      `SELECT speaks, begun_units, counted_units, first_up_on::text, missing_units, lost_units, potted_units, potted_plants, potted_alive
         FROM batch_evidence WHERE batch_id = $1`,
      [batchId],
    )
  )[0];
const reverse = (entryId: string) => nursery.as('grower').stock.reverseEntry(sent({ entryId }));
const brokenLaws = async () => (await checkLaws(database.ownerUrl)).breaches;

it('is written by the command that changes a batch, and follows when that is taken back', async () => {
  const { batchId, entryId } = await batches.start({ units: 100 });
  const begun = {
    speaks: true,
    begun_units: 100,
    counted_units: null,
    first_up_on: null,
    missing_units: 0,
    lost_units: 0,
    potted_units: 0,
    potted_plants: 0,
    potted_alive: 0,
  };
  expect(await kept(batchId)).toEqual(begun);
  const counted = await batches.count(batchId, 60, '2026-04-01');
  const potted = await batches.pot(batchId, 30, 45, '2026-05-01');
  expect(await kept(batchId)).toEqual({
    ...begun,
    counted_units: 60,
    first_up_on: '2026-04-01',
    potted_units: 30,
    potted_plants: 45,
    potted_alive: 30,
  });
  expect(await brokenLaws()).toEqual([]);
  await reverse(potted.entryId);
  await reverse(counted.entryId);
  expect(await kept(batchId)).toEqual(begun);
  await reverse(entryId);
  expect((await kept(batchId))?.speaks).toBe(false);
  expect(await brokenLaws()).toEqual([]);
});

it('is named by the check where it says something else, and mended by the verb', async () => {
  const { batchId } = await batches.start({ units: 40 });
  await nursery.sql('UPDATE batch_evidence SET begun_units = 41 WHERE batch_id = $1', [batchId]);
  expect(await brokenLaws()).toEqual([
    { law: 'evidence-follows-entries', nursery: nursery.nurseryId, what: expect.stringContaining(batchId) },
  ]);
  const address = process.env.DATABASE_URL;
  process.env.DATABASE_URL = database.ownerUrl;
  try {
    expect(await rebuildEvidence()).toBe(0);
  } finally {
    if (address === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = address;
  }
  expect((await kept(batchId))?.begun_units).toBe(40);
  expect(await brokenLaws()).toEqual([]);
});

it('is not to be deleted', async () => {
  await batches.start({ units: 10 });
  await expect(nursery.sql('DELETE FROM batch_evidence')).rejects.toThrow('batch_evidence');
});
