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

const reverse = (entryId: string) => nursery.as('grower').stock.reverseEntry(sent({ entryId }));

describe('taking back an entry of a batch', () => {
  it('forgets a count, its clock and what it booked as unexplained', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 60, '2026-04-10');
    const { entryId } = await batches.count(batchId, 50, '2026-04-20');
    await reverse(entryId);
    expect(await batches.page(batchId)).toMatchObject({
      emergedUnits: 60,
      emergedOn: '2026-04-10',
      standingUnits: 100,
    });
  });

  it('stops the confined clock when its only count is taken back', async () => {
    const { batchId } = await batches.start();
    const { entryId } = await batches.count(batchId, 60, '2026-04-10');
    await reverse(entryId);
    expect(await batches.page(batchId)).toMatchObject({
      emergedUnits: null,
      confinedOn: null,
      containerOn: null,
      course: [],
    });
  });

  it('gives back cells and cautious yield when potting is taken back, and opens the batch again', async () => {
    const { batchId } = await batches.start({ cautiousUnits: 80 });
    await batches.count(batchId, 90, '2026-04-10');
    const { entryId, lotId } = await batches.pot(batchId, 100, 90, '2026-05-10');
    expect((await batches.page(batchId)).closedOn).toBe('2026-05-10');
    await reverse(entryId);
    expect(await batches.page(batchId)).toMatchObject({ standingUnits: 100, cautiousUnits: 80, closedOn: null });
    expect(await batches.stock.unitsOf(lotId)).toBe(0);
  });

  it('is refused for potted plants that have moved on, naming what came later', async () => {
    const { batchId } = await batches.start();
    await batches.count(batchId, 90, '2026-04-10');
    const { entryId, lotId } = await batches.pot(batchId, 20, 20, '2026-05-10');
    await nursery.as('grower').stock.loseFromLot(sent({ lotId, units: 1, cause: 'rot', happenedOn: '2026-05-12' }));
    expect(await refusalOf(reverse(entryId))).toMatchObject({
      code: 'units-have-gone',
      data: { later: [{ kind: 'lose' }] },
    });
  });

  it('opens a batch again that was closed', async () => {
    const { batchId } = await batches.start();
    const { entryId } = await batches.propagation.closeBatch(
      sent({ batchId, writeOffCause: 'failed', happenedOn: '2026-05-01' }),
    );
    await reverse(entryId);
    expect(await batches.page(batchId)).toMatchObject({ closedOn: null, standingUnits: 100 });
  });

  it('brings back what was expected before', async () => {
    const { batchId } = await batches.start({ cautiousUnits: 30 });
    const { entryId } = await batches.propagation.setBatchForecast(
      sent({ batchId, happenedOn: '2026-04-20', cautiousUnits: 70, targetContainerId: batches.potId }),
    );
    await reverse(entryId);
    expect((await batches.page(batchId)).cautiousUnits).toBe(30);
  });

  it('ends a batch whose start is taken back', async () => {
    const { batchId, entryId } = await batches.start();
    await reverse(entryId);
    expect(await batches.page(batchId)).toMatchObject({ standingUnits: 0, closedOn: '2026-03-01' });
  });

  it('marks the entry in the story', async () => {
    const { batchId } = await batches.start();
    const { entryId } = await batches.count(batchId, 60, '2026-04-10');
    const { entryId: reversalId } = await reverse(entryId);
    const { story } = await batches.page(batchId);
    expect(story.find((entry) => entry.entryId === entryId)?.reversedById).toBe(reversalId);
  });
});
