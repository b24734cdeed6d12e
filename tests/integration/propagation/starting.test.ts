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

const seedInCells = () => ({
  batchId: randomUUID(),
  plantId: batches.plantId,
  sourceId: batches.sourceId,
  method: 'seed' as const,
  unit: 'cell' as const,
  containerId: batches.trayId,
  units: 72,
  placeId: batches.benchId,
  happenedOn: '2026-03-01',
});
const refusedStart = (changes: object) =>
  refusalOf(batches.propagation.startBatch(sent({ ...seedInCells(), ...changes })));

describe('starting a batch', () => {
  it('reckons the cells of whole trays and gives the batch a code of its plant and year', async () => {
    const { units: _units, ...inTrays } = seedInCells();
    const started = await batches.propagation.startBatch(sent({ ...inTrays, trays: 4 }));
    expect(started.units).toBe(288);
    expect(started.code).toMatch(/^ASTU-26-\d{3}$/);
  });

  it('keeps the seeds sown beside the cells', async () => {
    const body = seedInCells();
    await batches.propagation.startBatch(sent({ ...body, seedsSown: 216 }));
    expect(await batches.page(body.batchId)).toMatchObject({ standingUnits: 72, seedsSown: 216, emergedUnits: null });
  });

  it('takes nothing off the mother lot that gave the divisions', async () => {
    const motherId = await batches.stock.addLot({
      plantId: batches.plantId,
      containerId: batches.potId,
      sourceId: batches.sourceId,
      placeId: batches.benchId,
      units: 3,
    });
    const sourceId = await batches.stock.addSource(batches.plantId, { kind: 'mother-plants', motherLotId: motherId });
    await batches.propagation.startBatch(
      sent({ ...seedInCells(), sourceId, method: 'division', unit: 'piece', containerId: null, units: 40 }),
    );
    expect(await batches.stock.unitsOf(motherId)).toBe(3);
  });

  it('refuses a day in the future', async () => {
    expect(await refusedStart({ happenedOn: '2026-05-21' })).toMatchObject({
      code: 'day-in-future',
      field: 'happenedOn',
    });
  });

  it('refuses a date that does not exist', async () => {
    expect(await refusedStart({ happenedOn: '2026-02-30' })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'happenedOn', problem: 'not-a-date' }] },
    });
  });

  it('refuses to sow before the seed was gathered', async () => {
    const sourceId = await batches.stock.addSource(batches.plantId);
    await nursery.sql(`UPDATE source SET gathered_on = '2026-04-01', gathered_precision = 'day' WHERE id = $1`, [
      sourceId,
    ]);
    expect(await refusedStart({ sourceId })).toMatchObject({ code: 'day-too-early', data: { earliest: '2026-04-01' } });
  });

  it.each([
    [0, 'too-small'],
    [-3, 'too-small'],
    [1.5, 'not-whole'],
  ])('refuses %s units', async (units, problem) => {
    expect(await refusedStart({ units })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'units', problem }] },
    });
  });

  it('refuses a batch without any number of units', async () => {
    expect(await refusedStart({ units: null })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'units', problem: 'required' }] },
    });
  });

  it('refuses an unknown plant', async () => {
    expect(await refusedStart({ plantId: randomUUID() })).toMatchObject({ code: 'not-found', field: 'plantId' });
  });

  it('refuses the source of another plant', async () => {
    const otherPlant = await batches.stock.addPlant({ code: 'ASIN', name: 'Asclepias incarnata' });
    expect(await refusedStart({ sourceId: await batches.stock.addSource(otherPlant) })).toMatchObject({
      code: 'source-of-other-plant',
      field: 'sourceId',
    });
  });

  it('refuses a retired source', async () => {
    const sourceId = await batches.stock.addSource(batches.plantId);
    await nursery.sql('UPDATE source SET retired_at = now() WHERE id = $1', [sourceId]);
    expect(await refusedStart({ sourceId })).toMatchObject({ code: 'source-retired', field: 'sourceId' });
  });

  it('refuses to count seed in pieces', async () => {
    expect(await refusedStart({ unit: 'piece', containerId: null })).toMatchObject({
      code: 'unit-not-for-method',
      data: { fits: ['cell', 'tray', 'pack'] },
    });
  });

  it('refuses cells in an open flat', async () => {
    expect(await refusedStart({ containerId: batches.flatId })).toMatchObject({
      code: 'container-not-for-unit',
      field: 'containerId',
    });
  });

  it('refuses whole trays of a container whose cells nobody has counted', async () => {
    expect(await refusedStart({ containerId: batches.potId, units: null, trays: 3 })).toMatchObject({
      code: 'tray-without-cells',
      field: 'trays',
    });
  });

  it('refuses seeds sown for cuttings', async () => {
    expect(await refusedStart({ method: 'cutting', seedsSown: 10 })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'seedsSown' }] },
    });
  });

  it('refuses a cautious yield above the cells that were sown', async () => {
    expect(await refusedStart({ cautiousUnits: 73 })).toMatchObject({
      code: 'cautious-over-units',
      data: { cautious: 73, standing: 72 },
    });
  });

  it('refuses an id that is in use', async () => {
    const { batchId } = await batches.start();
    expect(await refusedStart({ batchId })).toMatchObject({ code: 'id-taken' });
  });

  it('answers another nursery as if the batch did not exist', async () => {
    const { batchId } = await batches.start();
    const other = await openNursery(database);
    const answer = await refusalOf(
      other
        .as('grower')
        .propagation.countBatch(sent({ batchId, emergedUnits: 1, countKind: 'counted', happenedOn: '2026-04-01' })),
    );
    await other.close();
    expect(answer).toEqual({ code: 'not-found', data: { what: 'batch' }, field: 'batchId' });
  });

  it('is not for those who only look', async () => {
    expect(await refusalOf(nursery.as('viewer').propagation.startBatch(sent(seedInCells())))).toMatchObject({
      code: 'not-allowed',
    });
  });
});
