import { randomUUID } from 'node:crypto';
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

const counted = async (options: Parameters<typeof batches.start>[0] = {}, on = '2026-04-10', emerged = 80) => {
  const { batchId } = await batches.start(options);
  await batches.count(batchId, emerged, on);
  return batchId;
};

describe('potting from a batch', () => {
  it('counts both sides: cells out of the batch, plants into the lot', async () => {
    const batchId = await counted();
    const { lotId } = await batches.pot(batchId, 60, 66, '2026-05-10');
    expect((await batches.page(batchId)).standingUnits).toBe(40);
    expect(await batches.stock.unitsOf(lotId)).toBe(66);
  });

  it('gives the lot the clock of its cells and a new one for its pot', async () => {
    const batchId = await counted();
    const { lotId } = await batches.pot(batchId, 60, 60, '2026-05-10');
    expect(await batches.lot(lotId)).toMatchObject({
      confined_on: '2026-04-10',
      confined_standing: 'recorded',
      container_on: '2026-05-10',
      potted_on: '2026-05-10',
    });
  });

  it('remembers the first emergence of plugs that overwintered in their trays', async () => {
    const batchId = await counted({ on: '2025-03-10' }, '2025-04-02');
    const { lotId } = await batches.pot(batchId, 60, 60, '2026-05-06');
    expect(await batches.lot(lotId)).toMatchObject({ confined_on: '2025-04-02', container_on: '2026-05-06' });
  });

  it('starts the clock of an open flat with pricking out', async () => {
    const batchId = await counted({ unit: 'tray', units: 2 }, '2026-04-01', 300);
    const { lotId } = await batches.pot(batchId, 0, 120, '2026-05-10');
    expect(await batches.lot(lotId)).toMatchObject({ confined_on: '2026-05-10' });
    expect((await batches.page(batchId)).standingUnits).toBe(2);
  });

  it('starts the clock of loose divisions with potting', async () => {
    const { batchId } = await batches.start({ method: 'division', unit: 'piece', units: 20 });
    const { lotId } = await batches.pot(batchId, 20, 20, '2026-03-03');
    expect(await batches.lot(lotId)).toMatchObject({ confined_on: '2026-03-03' });
  });

  it('fills several lots in one entry', async () => {
    const batchId = await counted();
    const [small, tall] = [randomUUID(), randomUUID()];
    const tallId = await batches.stock.addContainer({ code: `tall-${tall.slice(0, 4)}` });
    await batches.propagation.potBatch(
      sent({
        batchId,
        happenedOn: '2026-05-10',
        lots: [
          { lotId: small, containerId: batches.potId, placeId: batches.benchId, unitsOut: 30, pottedUnits: 30 },
          { lotId: tall, containerId: tallId, placeId: batches.frameId, unitsOut: 20, pottedUnits: 21 },
        ],
      }),
    );
    expect((await batches.page(batchId)).lots.map((lot) => lot.pottedUnits).sort()).toEqual([21, 30]);
  });

  it('adds to a lot that was begun some days ago, whose first day goes on to count', async () => {
    const batchId = await counted();
    const { lotId } = await batches.pot(batchId, 30, 30, '2026-05-10');
    await batches.pot(batchId, 20, 22, '2026-05-17', { lotId, into: 'existing' });
    expect(await batches.stock.unitsOf(lotId)).toBe(52);
    expect((await batches.lot(lotId))?.potted_on).toBe('2026-05-10');
  });

  it('refuses to add to a lot after the days of potting are over', async () => {
    const batchId = await counted();
    const { lotId } = await batches.pot(batchId, 30, 30, '2026-05-10');
    expect(await refusalOf(batches.pot(batchId, 20, 22, '2026-05-18', { lotId, into: 'existing' }))).toMatchObject({
      code: 'potting-is-over',
      data: { lastOn: '2026-05-17' },
      field: 'lots.0.lotId',
    });
  });

  it('refuses to add to the lot of another batch', async () => {
    const { lotId } = await batches.pot(await counted(), 30, 30, '2026-05-10');
    expect(
      await refusalOf(batches.pot(await counted(), 20, 22, '2026-05-11', { lotId, into: 'existing' })),
    ).toMatchObject({ code: 'lot-not-of-batch' });
  });

  it('refuses to add to a lot of another nursery as if it did not exist', async () => {
    expect(
      await refusalOf(batches.pot(await counted(), 20, 22, '2026-05-11', { lotId: randomUUID(), into: 'existing' })),
    ).toMatchObject({ code: 'not-found', field: 'lots.0.lotId' });
  });

  it('refuses more cells than stand, naming both numbers', async () => {
    const batchId = await counted();
    expect(await refusalOf(batches.pot(batchId, 101, 101, '2026-05-10'))).toMatchObject({
      code: 'not-enough-units',
      data: { wanted: 101, available: 100 },
      field: 'lots.0.unitsOut',
    });
    expect((await batches.page(batchId)).lots).toEqual([]);
  });

  it('refuses to pot out of cells without taking any', async () => {
    expect(await refusalOf(batches.pot(await counted(), 0, 10, '2026-05-10'))).toMatchObject({
      code: 'units-must-leave',
    });
  });

  it.each([0, -4, 1.5])('refuses %s plants', async (plants) => {
    expect(await refusalOf(batches.pot(await counted(), 10, plants, '2026-05-10'))).toMatchObject({
      code: 'invalid-input',
      field: 'lots.0.pottedUnits',
    });
  });

  it('refuses a day before the batch began', async () => {
    expect(await refusalOf(batches.pot(await counted(), 10, 10, '2026-02-01'))).toMatchObject({
      code: 'day-too-early',
    });
  });

  it('refuses a day in the future', async () => {
    expect(await refusalOf(batches.pot(await counted(), 10, 10, '2026-05-21'))).toMatchObject({
      code: 'day-in-future',
    });
  });

  it('refuses a new lot without a container', async () => {
    expect(await refusalOf(batches.pot(await counted(), 10, 10, '2026-05-10', { containerId: null }))).toMatchObject({
      code: 'invalid-input',
      field: 'lots.0.containerId',
    });
  });

  it('asks when cells came up that nobody counted', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.pot(batchId, 10, 10, '2026-05-10'))).toMatchObject({
      code: 'first-alive-unknown',
      field: 'firstAlive',
    });
  });

  it('takes a month for it, from its first day on and marked as assumed', async () => {
    const { batchId } = await batches.start();
    const { lotId } = await batches.pot(batchId, 10, 10, '2026-05-10', { firstAlive: '2026-04' });
    expect(await batches.lot(lotId)).toMatchObject({ confined_on: '2026-04-01', confined_standing: 'assumed' });
    expect((await batches.page(batchId)).confinedOn).toBe('2026-04-01');
  });

  it('refuses a first emergence before the sowing', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(batches.pot(batchId, 10, 10, '2026-05-10', { firstAlive: '2026-02' }))).toMatchObject({
      code: 'day-too-early',
      field: 'firstAlive',
    });
  });

  it('takes the potted plants off what may still be promised', async () => {
    const { batchId } = await batches.start({ cautiousUnits: 70, readyOn: '2026-06-20' });
    await batches.count(batchId, 80, '2026-04-10');
    const { lotId } = await batches.pot(batchId, 50, 50, '2026-05-10');
    expect((await batches.page(batchId)).cautiousUnits).toBe(20);
    expect((await batches.lot(lotId))?.ready_on).toBe('2026-06-20');
  });

  it('leaves in the batch what the last count saw and the pots did not take', async () => {
    const batchId = await counted();
    await batches.pot(batchId, 60, 66, '2026-05-10');
    expect((await batches.page(batchId)).aliveUnits).toBe(20);
  });

  it('ends the batch with its last cell', async () => {
    const batchId = await counted();
    await batches.pot(batchId, 100, 82, '2026-05-10');
    expect((await batches.page(batchId)).closedOn).toBe('2026-05-10');
    expect(await refusalOf(batches.pot(batchId, 1, 1, '2026-05-11'))).toMatchObject({ code: 'batch-closed' });
  });

  it('lets a lot be traced to its batch', async () => {
    const batchId = await counted();
    const { lotId } = await batches.pot(batchId, 10, 10, '2026-05-10');
    expect(
      await nursery.sql(
        'SELECT parent_id::text, parent_kind FROM lineage WHERE nursery_id = $1 AND child_lot_id = $2',
        [nursery.nurseryId, lotId],
      ),
    ).toEqual([{ parent_id: batchId, parent_kind: 'batch' }]);
  });
});
