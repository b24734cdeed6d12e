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

const lose = (
  batchId: string,
  units: number,
  more: { cause?: 'failed' | 'looks-dead'; happenedOn?: string; confirmed?: boolean; placeId?: string } = {},
) =>
  batches.propagation.loseFromBatch(
    sent({ batchId, units, cause: 'failed' as const, happenedOn: '2026-04-20', ...more }),
  );
const move = (batchId: string, more: { units?: number; toPlaceId?: string; fromPlaceId?: string } = {}) =>
  batches.propagation.moveBatch(sent({ batchId, toPlaceId: batches.frameId, happenedOn: '2026-04-20', ...more }));
const correct = (batchId: string, units: number, placeId: string | null = null) =>
  batches.propagation.correctBatchUnits(sent({ batchId, units, placeId, happenedOn: '2026-04-20' }));

describe('writing off', () => {
  it('takes failed cells out of the batch', async () => {
    const { batchId } = await batches.start();
    await lose(batchId, 30);
    expect(await batches.left(batchId, 'lost')).toBe(30);
  });

  it('keeps the cautious yield within the cells that are left', async () => {
    const { batchId } = await batches.start({ cautiousUnits: 80 });
    await lose(batchId, 30);
    expect((await batches.page(batchId)).cautiousUnits).toBe(70);
  });

  it('refuses more than stand, naming both numbers', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(lose(batchId, 101))).toMatchObject({
      code: 'not-enough-units',
      data: { wanted: 101, available: 100 },
    });
  });

  it('asks which place is meant where the batch stands in two', async () => {
    const { batchId } = await batches.start();
    await move(batchId, { units: 40 });
    expect(await refusalOf(lose(batchId, 30))).toMatchObject({ code: 'which-place', field: 'placeId' });
    await lose(batchId, 30, { placeId: batches.frameId });
    expect((await batches.page(batchId)).places.find((place) => place.placeId === batches.frameId)?.units).toBe(10);
  });

  it('asks once more before plants are called dead that may only be dormant', async () => {
    const { batchId } = await batches.start({ on: '2025-06-01' });
    expect(await refusalOf(lose(batchId, 30, { cause: 'looks-dead' }))).toMatchObject({
      code: 'may-be-dormant',
      field: 'cause',
    });
    await lose(batchId, 30, { cause: 'looks-dead', confirmed: true });
    expect((await batches.page(batchId)).standingUnits).toBe(70);
  });

  it('refuses a day before the batch began', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(lose(batchId, 1, { happenedOn: '2026-02-01' }))).toMatchObject({ code: 'day-too-early' });
  });
});

describe('moving', () => {
  it('takes all of it to another place', async () => {
    const { batchId } = await batches.start();
    await move(batchId);
    expect((await batches.page(batchId)).places).toMatchObject([{ placeId: batches.frameId, units: 100 }]);
  });

  it('takes part of it to another place', async () => {
    const { batchId } = await batches.start();
    await move(batchId, { units: 36 });
    expect((await batches.page(batchId)).places.map((place) => place.units).sort()).toEqual([36, 64]);
  });

  it('refuses to move it where it stands', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(move(batchId, { toPlaceId: batches.benchId }))).toMatchObject({
      code: 'batch-already-there',
    });
  });

  it('refuses an unknown place', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(move(batchId, { toPlaceId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'toPlaceId',
    });
  });

  it('refuses a place that is closed, naming until when', async () => {
    const { batchId } = await batches.start();
    const closedId = await batches.stock.addPlace();
    await nursery.sql(
      `UPDATE place SET closed_until_at = '2026-05-22T12:00:00Z', closed_reason = 'sprayed' WHERE id = $1`,
      [closedId],
    );
    expect(await refusalOf(move(batchId, { toPlaceId: closedId }))).toMatchObject({
      code: 'place-closed',
      field: 'toPlaceId',
      data: { reason: 'sprayed' },
    });
  });

  it('refuses more than stand', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(move(batchId, { units: 101 }))).toMatchObject({
      code: 'not-enough-units',
      data: { available: 100 },
    });
  });
});

describe('what may be promised of a batch', () => {
  const forecast = (
    batchId: string,
    cautiousUnits: number,
    more: { readyOn?: string; targetContainerId?: string } = {},
  ) =>
    batches.propagation.setBatchForecast(
      sent({ batchId, happenedOn: '2026-04-20', cautiousUnits, targetContainerId: batches.potId, ...more }),
    );

  it('is set by an entry on the batch', async () => {
    const { batchId } = await batches.start();
    await forecast(batchId, 64, { readyOn: '2026-07-01' });
    expect(await batches.page(batchId)).toMatchObject({
      cautiousUnits: 64,
      readyOn: '2026-07-01',
      targetContainerId: batches.potId,
    });
  });

  it('is not more than the cells that stand', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(forecast(batchId, 101))).toMatchObject({
      code: 'cautious-over-units',
      data: { cautious: 101, standing: 100 },
    });
  });

  it('may be more than the flats that stand', async () => {
    const { batchId } = await batches.start({ unit: 'tray', units: 2 });
    await forecast(batchId, 200);
    expect((await batches.page(batchId)).cautiousUnits).toBe(200);
  });

  it('is not for an unknown container', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(forecast(batchId, 10, { targetContainerId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'targetContainerId',
    });
  });

  it('is not ready before the batch began', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(forecast(batchId, 10, { readyOn: '2026-02-01' }))).toMatchObject({
      code: 'day-too-early',
      field: 'readyOn',
    });
  });

  it('is a grower’s to say', async () => {
    const { batchId } = await batches.start();
    expect(
      await refusalOf(
        nursery.as('crew').propagation.setBatchForecast(sent({ batchId, happenedOn: '2026-04-20', cautiousUnits: 1 })),
      ),
    ).toMatchObject({ code: 'not-allowed' });
  });
});

describe('correcting the number of cells', () => {
  it('books missing ones as unexplained', async () => {
    const { batchId } = await batches.start();
    expect(await correct(batchId, 97)).toMatchObject({ difference: -3 });
    expect(await batches.left(batchId, 'unexplained')).toBe(3);
  });

  it('books surplus ones as found', async () => {
    const { batchId } = await batches.start();
    await correct(batchId, 110);
    expect((await batches.page(batchId)).standingUnits).toBe(110);
  });

  it('asks which place is meant where the batch stands in two', async () => {
    const { batchId } = await batches.start();
    await move(batchId, { units: 40 });
    expect(await refusalOf(correct(batchId, 50))).toMatchObject({ code: 'which-place' });
    await correct(batchId, 39, batches.frameId);
    expect((await batches.page(batchId)).standingUnits).toBe(99);
  });

  it('starts no clock', async () => {
    const { batchId } = await batches.start();
    await correct(batchId, 97);
    expect(await batches.page(batchId)).toMatchObject({ confinedOn: null, course: [] });
  });
});

describe('closing', () => {
  const close = (batchId: string, more: { writeOffCause?: 'failed' } = {}) =>
    batches.propagation.closeBatch(sent({ batchId, happenedOn: '2026-05-01', ...more }));

  it('is refused while something is unaccounted for, naming how much', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(close(batchId))).toMatchObject({
      code: 'units-left',
      data: { left: 100, unit: 'cell' },
      field: 'writeOffCause',
    });
  });

  it('writes the rest off with its cause in the same entry', async () => {
    const { batchId } = await batches.start();
    await move(batchId, { units: 40 });
    expect(await close(batchId, { writeOffCause: 'failed' })).toMatchObject({ writtenOffUnits: 100 });
    expect(await batches.page(batchId)).toMatchObject({ standingUnits: 0, closedOn: '2026-05-01', cautiousUnits: 0 });
  });

  it('happens once', async () => {
    const { batchId } = await batches.start();
    await close(batchId, { writeOffCause: 'failed' });
    expect(await refusalOf(close(batchId, { writeOffCause: 'failed' }))).toMatchObject({
      code: 'batch-closed',
      data: { closedOn: '2026-05-01' },
    });
  });

  it('lets a count of an earlier day still be written down', async () => {
    const { batchId } = await batches.start();
    await close(batchId, { writeOffCause: 'failed' });
    await batches.count(batchId, 12, '2026-04-20');
    expect((await batches.page(batchId)).course).toEqual([{ on: '2026-04-20', emergedUnits: 12 }]);
    expect(await refusalOf(batches.count(batchId, 12, '2026-05-02'))).toMatchObject({ code: 'batch-closed' });
  });

  it('waits when the batch is kept for a second winter', async () => {
    const { batchId } = await batches.start();
    await batches.propagation.keepForSecondWinter(sent({ batchId, happenedOn: '2026-05-10' }));
    expect(await batches.page(batchId)).toMatchObject({ secondWinterOn: '2026-05-10', closedOn: null });
  });
});
