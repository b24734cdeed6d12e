import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from './batches.ts';

let database: TestDatabase;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;
let sown: string;
let stuck: string;
let over: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  batches = await batchesOf(nursery);
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'common', 'Butterfly weed', 'butterfly weed')`,
    [nursery.nurseryId, randomUUID(), batches.plantId],
  );
  await nursery.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common practice')`,
    [nursery.nurseryId, randomUUID()],
  );
  ({ batchId: sown } = await batches.start({ on: '2025-04-01' }));
  await batches.count(sown, 70, '2025-06-01');
  ({ batchId: stuck } = await batches.start({ method: 'cutting', unit: 'piece', units: 30, on: '2026-05-01' }));
  ({ batchId: over } = await batches.start({ on: '2026-02-01' }));
  await batches.propagation.closeBatch(sent({ batchId: over, writeOffCause: 'failed', happenedOn: '2026-05-01' }));
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const ids = async (input: Parameters<typeof batches.propagation.listBatches>[0]) =>
  (await batches.propagation.listBatches(input)).rows.map((row) => row.batchId);

describe('the list of batches', () => {
  it('shows the open ones, the one that must leave its cells first at the top', async () => {
    expect(await ids({})).toEqual([sown, stuck]);
  });

  it('tells what stands, what came up, how long ago and how near the plant-by day is', async () => {
    const { rows } = await batches.propagation.listBatches({});
    expect(rows[0]).toMatchObject({
      standingUnits: 100,
      emergedUnits: 70,
      daysSinceStart: 414,
      daysSinceConfined: 353,
      plantByOn: '2026-06-01',
      band: 'due',
      daysLeft: 12,
    });
    expect(rows[1]).toMatchObject({ plantByOn: null, band: 'unlimited' });
  });

  it('shows the closed ones when asked', async () => {
    expect(await ids({ state: 'closed' })).toEqual([over]);
  });

  it('is narrowed by method', async () => {
    expect(await ids({ method: 'cutting' })).toEqual([stuck]);
  });

  it('finds a batch by a common name of its plant', async () => {
    expect(await ids({ text: 'butterfly' })).toEqual([sown, stuck]);
    expect(await ids({ text: 'nodding onion' })).toEqual([]);
  });

  it('is sorted by the server', async () => {
    expect(await ids({ sort: 'units', descending: false })).toEqual([stuck, sown]);
  });

  it('comes in pages', async () => {
    expect(await batches.propagation.listBatches({ perPage: 1, page: 2, sort: 'startedOn' })).toMatchObject({
      total: 2,
      rows: [{ batchId: stuck }],
    });
  });

  it('is empty for another nursery', async () => {
    const other = await openNursery(database);
    const { total } = await other.as('viewer').propagation.listBatches({ state: 'all' });
    await other.close();
    expect(total).toBe(0);
  });
});

describe('a batch’s page', () => {
  it('tells its whole story, the newest day first', async () => {
    const { story } = await batches.page(sown);
    expect(story.map((entry) => [entry.kind, entry.happenedOn, entry.personName])).toEqual([
      ['count', '2025-06-01', 'Test grower'],
      ['start', '2025-04-01', 'Test grower'],
    ]);
  });

  it('names the rule that binds it', async () => {
    expect((await batches.page(sown)).rule).toMatchObject({
      basis: 'confined',
      span: 'P1Y',
      standing: 'common practice',
    });
  });

  it('answers for a batch that does not exist as for another nursery’s', async () => {
    const other = await openNursery(database);
    const strange = await refusalOf(other.as('owner').propagation.readBatch({ batchId: sown }));
    await other.close();
    expect(strange).toEqual(await refusalOf(batches.page(randomUUID())));
  });
});
