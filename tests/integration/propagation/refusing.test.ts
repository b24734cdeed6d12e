import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from './batches.ts';

let database: TestDatabase;
let nursery: TestNursery;
let strangers: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  strangers = await openNursery(database);
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await strangers.close();
  await database.drop();
});

type Procedures = ReturnType<TestNursery['as']>['propagation'];
type Entry = (procedures: Procedures, batchId: string, happenedOn: string) => Promise<unknown>;

const lotOf = () => ({
  lotId: randomUUID(),
  containerId: batches.potId,
  placeId: batches.benchId,
  unitsOut: 1,
  pottedUnits: 1,
});

/** Every entry that can be made on a batch, each with input that is right in itself. */
const entries: [string, Entry][] = [
  [
    'counting',
    (p, batchId, happenedOn) => p.countBatch(sent({ batchId, emergedUnits: 3, countKind: 'counted', happenedOn })),
  ],
  ['thinning', (p, batchId, happenedOn) => p.thinBatch(sent({ batchId, happenedOn }))],
  [
    'writing off',
    (p, batchId, happenedOn) => p.loseFromBatch(sent({ batchId, units: 1, cause: 'failed', happenedOn })),
  ],
  [
    'potting',
    (p, batchId, happenedOn) => p.potBatch(sent({ batchId, happenedOn, firstAlive: '2026-03', lots: [lotOf()] })),
  ],
  ['moving', (p, batchId, happenedOn) => p.moveBatch(sent({ batchId, toPlaceId: batches.frameId, happenedOn }))],
  ['expecting', (p, batchId, happenedOn) => p.setBatchForecast(sent({ batchId, cautiousUnits: 1, happenedOn }))],
  ['correcting', (p, batchId, happenedOn) => p.correctBatchUnits(sent({ batchId, units: 99, happenedOn }))],
  ['closing', (p, batchId, happenedOn) => p.closeBatch(sent({ batchId, writeOffCause: 'failed', happenedOn }))],
  ['keeping for a second winter', (p, batchId, happenedOn) => p.keepForSecondWinter(sent({ batchId, happenedOn }))],
];

const entriesOf = async (batchId: string) =>
  (
    await nursery.sql<{ entries: number }>(
      'SELECT count(*)::int AS entries FROM entry_subject WHERE nursery_id = $1 AND subject_id = $2',
      [nursery.nurseryId, batchId],
    )
  )[0]?.entries;

describe.each(entries)('%s', (_what, enter) => {
  it('refuses a day in the future and writes nothing', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(enter(batches.propagation, batchId, '2026-05-21'))).toMatchObject({
      code: 'day-in-future',
      data: { today: '2026-05-20' },
    });
    expect(await entriesOf(batchId)).toBe(1);
  });

  it('refuses a day before the batch began', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(enter(batches.propagation, batchId, '2026-02-28'))).toMatchObject({
      code: 'day-too-early',
      data: { earliest: '2026-03-01' },
    });
  });

  it('refuses a date that does not exist', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(enter(batches.propagation, batchId, '2026-04-31'))).toMatchObject({
      code: 'invalid-input',
      field: 'happenedOn',
    });
  });

  it('refuses a batch that is closed', async () => {
    const { batchId } = await batches.start();
    await batches.propagation.closeBatch(sent({ batchId, writeOffCause: 'failed', happenedOn: '2026-05-01' }));
    expect(await refusalOf(enter(batches.propagation, batchId, '2026-05-02'))).toMatchObject({
      code: 'batch-closed',
      data: { closedOn: '2026-05-01' },
    });
  });

  it('answers another nursery as for a batch that does not exist', async () => {
    const { batchId } = await batches.start();
    const theirs = strangers.as('owner').propagation;
    const strange = await refusalOf(enter(theirs, batchId, '2026-05-02'));
    expect(strange).toEqual({ code: 'not-found', data: { what: 'batch' }, field: 'batchId' });
    expect(await refusalOf(enter(theirs, randomUUID(), '2026-05-02'))).toEqual(strange);
  });

  it('is not for those who only look', async () => {
    const { batchId } = await batches.start();
    expect(await refusalOf(enter(nursery.as('viewer').propagation, batchId, '2026-05-02'))).toMatchObject({
      code: 'not-allowed',
    });
  });
});
