import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkLaws } from '../../../../apps/server/src/db/check.ts';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { stagesOf } from './protocol.ts';

let database: TestDatabase;
let nursery: TestNursery;
let staged: Awaited<ReturnType<typeof stagesOf>>;
let versionId: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  staged = await stagesOf(nursery);
  ({ versionId } = await staged.addProtocol());
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

/** Packs in stratification, and what a batch drawn from them is started with. */
async function packsOf(units = 6, changes: object = {}) {
  const packs = await staged.startUnder(versionId, {
    unit: 'pack',
    containerId: null,
    units,
    seedsSown: units * 100,
    happenedOn: '2026-02-01',
    ...changes,
  });
  const drawing = (taken: number, more: object = {}) => ({
    ...staged.startBody(versionId),
    happenedOn: '2026-03-10',
    fromPacks: { batchId: packs.batchId, units: taken },
    ...more,
  });
  const draw = async (taken: number, more: object = {}) => {
    const body = drawing(taken, more);
    const { entryId, code } = await staged.propagation.startBatch(sent(body));
    return { batchId: body.batchId, entryId, code };
  };
  return {
    ...packs,
    drawing,
    draw,
    refused: (taken: number, more: object = {}) => refusalOf(staged.propagation.startBatch(sent(drawing(taken, more)))),
  };
}

describe('drawing packs in stratification', () => {
  it('takes packs out of their batch and starts cells of another, both sides counted', async () => {
    const packs = await packsOf();
    const drawn = await packs.draw(2);
    expect(await staged.page(packs.batchId)).toMatchObject({
      standingUnits: 4,
      closedOn: null,
      drawn: [{ batchId: drawn.batchId, packs: 2, startedUnits: 100, unit: 'cell' }],
    });
    expect(await staged.page(drawn.batchId)).toMatchObject({
      standingUnits: 100,
      startedUnits: 100,
      parent: { batchId: packs.batchId, code: packs.code },
    });
  });
  it('begins with the stage after stratification', async () => {
    const packs = await packsOf();
    const { batchId } = await packs.draw(2);
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'emergence', begunOn: '2026-03-10' });
  });
  it('leaves the stage and the yield of the packs as they were', async () => {
    const packs = await packsOf(6, { cautiousUnits: 40 });
    await packs.draw(2, { cautiousUnits: 60 });
    expect(await staged.stage(packs.batchId)).toMatchObject({ kind: 'stratification', begunOn: '2026-02-01' });
    expect(await staged.page(packs.batchId)).toMatchObject({ cautiousUnits: 40 });
  });
  it('takes no pack while they stay in use', async () => {
    const packs = await packsOf();
    const { batchId } = await packs.draw(0);
    expect(await staged.page(packs.batchId)).toMatchObject({ standingUnits: 6, drawn: [{ batchId, packs: 0 }] });
  });
  it('closes the batch of packs with its last pack', async () => {
    const packs = await packsOf(3);
    await packs.draw(2);
    await packs.draw(1, { happenedOn: '2026-03-20' });
    expect(await staged.page(packs.batchId)).toMatchObject({ standingUnits: 0, closedOn: '2026-03-20' });
  });
  it('books once the cells of packs that stood at two places', async () => {
    const packs = await packsOf(6);
    await staged.propagation.moveBatch(
      sent({ batchId: packs.batchId, toPlaceId: staged.frameId, units: 3, happenedOn: '2026-02-02' }),
    );
    const { batchId } = await packs.draw(6);
    expect((await staged.page(batchId)).standingUnits).toBe(100);
  });
  it('notes the seeds and grams drawn, and takes none out of the store again', async () => {
    const sourceId = await staged.stock.addSource(staged.plantId);
    await nursery
      .as('grower')
      .sources.receiveSeed(sent({ sourceId, kind: 'bought' as const, grams: 10, happenedOn: '2026-01-15' }));
    const packs = await packsOf(6, { sourceId, seedGrams: 4 });
    const { batchId } = await packs.draw(2, { sourceId, seedGrams: 1.5, seedsSown: 180 });
    expect(await staged.page(batchId)).toMatchObject({ seedsSown: 180, seedsGrams: 1.5 });
    expect(
      await nursery.sql('SELECT grams::float8 AS grams FROM seed_store WHERE nursery_id = $1 AND source_id = $2', [
        nursery.nurseryId,
        sourceId,
      ]),
    ).toEqual([{ grams: 6 }]);
  });
  it('gives the packs back when the start is taken back', async () => {
    const packs = await packsOf(3);
    const { batchId, entryId } = await packs.draw(3);
    await staged.reverse(entryId);
    expect(await staged.page(packs.batchId)).toMatchObject({ standingUnits: 3, closedOn: null, drawn: [] });
    expect(await staged.page(batchId)).toMatchObject({ standingUnits: 0, closedOn: '2026-03-10' });
  });
  it('is not taken back once the cells have moved on, naming what came later', async () => {
    const packs = await packsOf();
    const { batchId, entryId } = await packs.draw(2);
    await staged.propagation.loseFromBatch(
      sent({ batchId, units: 5, cause: 'rot' as const, happenedOn: '2026-03-12' }),
    );
    expect(await refusalOf(staged.reverse(entryId))).toMatchObject({
      code: 'units-have-gone',
      data: { later: [{ kind: 'lose' }] },
    });
  });
  it('stands in the story of both batches', async () => {
    const packs = await packsOf();
    const { batchId, code } = await packs.draw(2);
    const drawnOf = async (id: string) =>
      (await staged.page(id)).story.find(({ kind }) => kind === 'convert')?.movements[0];
    expect([await drawnOf(packs.batchId), await drawnOf(batchId)]).toMatchObject([
      { drawnFor: code, drawnFrom: null },
      { drawnFor: null, drawnFrom: packs.code },
    ]);
  });
  it('keeps all data laws', async () => {
    const packs = await packsOf();
    await packs.draw(2);
    await packs.draw(0);
    expect((await checkLaws(database.ownerUrl)).breaches).toEqual([]);
  });

  it('is refused for more packs than there are, with the numbers', async () => {
    const packs = await packsOf(3);
    expect(await packs.refused(4)).toMatchObject({
      code: 'not-enough-units',
      field: 'fromPacks.units',
      data: { wanted: 4, available: 3 },
    });
  });
  it('is refused from a batch that is not in packs', async () => {
    const { batchId, code } = await staged.startUnder(versionId);
    const packs = await packsOf();
    expect(await packs.refused(1, { fromPacks: { batchId, units: 1 } })).toMatchObject({
      code: 'not-packs',
      field: 'fromPacks.batchId',
      data: { batch: code, unit: 'cell' },
    });
  });
  it('is refused for seed of another source', async () => {
    const packs = await packsOf();
    expect(await packs.refused(1, { sourceId: await staged.stock.addSource(staged.plantId) })).toMatchObject({
      code: 'packs-of-other-source',
      field: 'fromPacks.batchId',
    });
  });
  it('is refused for another plant', async () => {
    const packs = await packsOf();
    const other = await stagesOf(nursery, { code: 'LIAS', name: 'Liatris aspera' });
    expect(
      await packs.refused(1, {
        plantId: other.plantId,
        sourceId: other.sourceId,
        protocolVersionId: null,
        unit: 'cell',
        containerId: other.trayId,
      }),
    ).toMatchObject({ code: 'packs-of-other-plant', field: 'fromPacks.batchId' });
  });
  it('is refused before the packs began', async () => {
    const packs = await packsOf();
    expect(await packs.refused(1, { happenedOn: '2026-01-31' })).toMatchObject({
      code: 'day-too-early',
      data: { earliest: '2026-02-01' },
    });
  });
  it('is refused from packs that are closed', async () => {
    const packs = await packsOf(1);
    await packs.draw(1);
    expect(await packs.refused(1)).toMatchObject({ code: 'batch-closed', field: 'fromPacks.batchId' });
  });
  it('is refused from packs that nobody knows', async () => {
    const packs = await packsOf();
    expect(await packs.refused(1, { fromPacks: { batchId: randomUUID(), units: 1 } })).toMatchObject({
      code: 'not-found',
      field: 'fromPacks.batchId',
    });
  });
  it('is refused from two places at once where only one is named', async () => {
    const packs = await packsOf(6);
    await staged.propagation.moveBatch(
      sent({ batchId: packs.batchId, toPlaceId: staged.frameId, units: 3, happenedOn: '2026-02-02' }),
    );
    expect(
      await packs.refused(4, { fromPacks: { batchId: packs.batchId, units: 4, placeId: staged.frameId } }),
    ).toMatchObject({ code: 'not-enough-units', data: { available: 3 } });
  });
});
