import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from './batches.ts';

let database: TestDatabase;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

describe('counting a batch', () => {
  it('starts the confined clock of cells with the first emergence and never with a November sowing', async () => {
    const { batchId } = await batches.start({ on: '2025-11-12' });
    expect((await batches.page(batchId)).confinedOn).toBeNull();
    await batches.count(batchId, 0, '2026-04-01');
    expect((await batches.page(batchId)).confinedOn).toBeNull();
    await batches.count(batchId, 31, '2026-04-25');
    expect(await batches.page(batchId)).toMatchObject({
      confinedOn: '2026-04-25',
      containerOn: '2026-04-25',
      daysSinceConfined: 25,
    });
  });

  it('moves the clock back when an earlier emergence is written down later', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 60, '2026-04-25');
    await batches.count(batchId, 4, '2026-04-10');
    expect(await batches.page(batchId)).toMatchObject({
      confinedOn: '2026-04-10',
      emergedUnits: 60,
      emergedOn: '2026-04-25',
      course: [
        { on: '2026-04-10', emergedUnits: 4 },
        { on: '2026-04-25', emergedUnits: 60 },
      ],
    });
  });

  it('starts no clock in an open flat', async () => {
    const { batchId } = await batches.start({ unit: 'tray', units: 2 });
    await batches.count(batchId, 300, '2026-04-01');
    expect((await batches.page(batchId)).confinedOn).toBeNull();
  });

  it('starts the clock of cuttings with the first rooted count', async () => {
    const { batchId } = await batches.start({ method: 'cutting', unit: 'piece', units: 30 });
    await batches.count(batchId, 5, '2026-04-02');
    expect((await batches.page(batchId)).confinedOn).toBe('2026-04-02');
  });

  it('books cells whose plants are gone as unexplained', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 60, '2026-04-10');
    expect(await batches.count(batchId, 52, '2026-04-20')).toMatchObject({ unexplainedUnits: 8 });
    expect(await batches.left(batchId, 'unexplained')).toBe(8);
    expect((await batches.page(batchId)).standingUnits).toBe(92);
  });

  it('does not call potted plants unexplained', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 60, '2026-04-10');
    await batches.pot(batchId, 40, 44, '2026-05-01');
    expect(await batches.count(batchId, 20, '2026-05-10')).toMatchObject({ unexplainedUnits: 0 });
  });

  it('leaves whole trays in the ledger when fewer plants live in them', async () => {
    const { batchId } = await batches.start({ unit: 'tray', units: 2 });
    await batches.count(batchId, 300, '2026-04-01');
    expect(await batches.count(batchId, 280, '2026-04-10')).toMatchObject({ unexplainedUnits: 20 });
    expect(await batches.left(batchId, 'unexplained')).toBe(0);
  });

  it('books nothing for a count of a day before the last one', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 60, '2026-04-20');
    await batches.count(batchId, 70, '2026-04-10');
    expect(await batches.count(batchId, 30, '2026-04-15')).toMatchObject({ unexplainedUnits: 0 });
  });

  it('refuses more cells with plants than stand, naming both numbers', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.count(batchId, 101, '2026-04-20'))).toMatchObject({
      code: 'more-emerged-than-units',
      field: 'emergedUnits',
      data: { emerged: 101, standing: 100 },
    });
  });

  it('lets a count of the day before potting name the cells that stood then', async () => {
    const { batchId } = await batches.start();
    await batches.pot(batchId, 50, 50, '2026-05-10', { firstAlive: '2026-04' });
    await batches.count(batchId, 90, '2026-05-09');
    expect((await batches.page(batchId)).emergedUnits).toBe(90);
  });

  it('refuses a day before the batch began', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.count(batchId, 3, '2026-02-28'))).toMatchObject({
      code: 'day-too-early',
      data: { earliest: '2026-03-01' },
    });
  });

  it('refuses a day in the future', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.count(batchId, 3, '2026-05-21'))).toMatchObject({ code: 'day-in-future' });
  });

  it.each([-1, 2.5])('refuses a count of %s', async (emergedUnits) => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.count(batchId, emergedUnits, '2026-04-20'))).toMatchObject({
      code: 'invalid-input',
      field: 'emergedUnits',
    });
  });

  it('takes the same command once', async () => {
    const { batchId } = await batches.start();
    const command = sent({ batchId, emergedUnits: 9, countKind: 'counted' as const, happenedOn: '2026-04-01' });
    const first = await batches.propagation.countBatch(command);
    expect(await batches.propagation.countBatch(command)).toEqual(first);
    expect((await batches.page(batchId)).course).toHaveLength(1);
  });
});

describe('thinning', () => {
  it('is seen in the story and takes no cell away', async () => {
    const { batchId } = await batches.start();
    await batches.propagation.thinBatch(sent({ batchId, thinnedUnits: 40, happenedOn: '2026-04-20' }));
    const page = await batches.page(batchId);
    expect(page.standingUnits).toBe(100);
    expect(page.story[0]).toMatchObject({ kind: 'observe', observed: { kind: 'thinned', amount: 40 } });
  });

  it('refuses a day before the batch began', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.propagation.thinBatch(sent({ batchId, happenedOn: '2026-02-01' })))).toMatchObject({
      code: 'day-too-early',
    });
  });
});
