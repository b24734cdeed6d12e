import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

const refusedStart = (changes: object) =>
  refusalOf(staged.propagation.startBatch(sent({ ...staged.startBody(versionId), ...changes })));

describe('starting a batch under a protocol', () => {
  it('takes unit, tray and target from the version that it keeps', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await staged.page(batchId)).toMatchObject({
      unit: 'cell',
      containerId: staged.trayId,
      targetContainerId: staged.potId,
      protocol: { versionId, number: 1, isCurrent: true },
    });
  });
  it('reckons cells of whole trays with the tray of the version', async () => {
    const { units: _units, ...body } = staged.startBody(versionId);
    expect((await staged.propagation.startBatch(sent({ ...body, trays: 2 }))).units).toBe(144);
  });
  it('takes what is said instead, and nothing where nothing is wanted', async () => {
    const { batchId } = await staged.startUnder(versionId, { unit: 'pack', units: 4, targetContainerId: null });
    expect(await staged.page(batchId)).toMatchObject({ unit: 'pack', containerId: null, targetContainerId: null });
  });
  it('begins with the first stage', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await staged.stage(batchId)).toEqual({
      position: 0,
      kind: 'stratification',
      begunOn: '2026-03-01',
      dueOn: '2026-03-31',
      lateOn: '2026-04-30',
    });
  });
  it('begins in a later stage where the seed was bought stratified, and sowing begins the wait for emergence', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1 });
    expect(await staged.stage(batchId)).toEqual({
      position: 2,
      kind: 'emergence',
      begunOn: '2026-03-01',
      dueOn: '2026-03-15',
      lateOn: '2026-03-29',
    });
  });
  it('keeps its version when the protocol is revised', async () => {
    const { protocolId, versionId: firstId } = await staged.addProtocol({ label: 'revised' });
    const { batchId } = await staged.startUnder(firstId);
    await nursery.as('grower').propagation.reviseProtocol(
      sent({
        protocolId,
        versionId: randomUUID(),
        basedOnVersionId: firstId,
        startUnit: 'cell',
        startContainerId: staged.trayId,
        stages: [{ kind: 'emergence', shortDays: 1, usualDays: 2, longDays: 3, share: 0.5 }],
        changeNote: 'Quicker',
      }),
    );
    expect((await staged.page(batchId)).protocol).toMatchObject({
      versionId: firstId,
      isCurrent: false,
      stages: [{ kind: 'stratification' }, {}, {}, {}, {}],
    });
  });
  it('takes its seed out of the store and remembers how much', async () => {
    const sourceId = await staged.stock.addSource(staged.plantId);
    await nursery
      .as('grower')
      .sources.receiveSeed(sent({ sourceId, kind: 'bought' as const, grams: 10, happenedOn: '2026-02-01' }));
    const { batchId, entryId } = await staged.startUnder(versionId, { sourceId, seedGrams: 2.5, seedsSown: 300 });
    const left = async () =>
      (
        await nursery.sql<{ grams: number }>(
          'SELECT grams::float8 AS grams FROM seed_store WHERE nursery_id = $1 AND source_id = $2',
          [nursery.nurseryId, sourceId],
        )
      )[0]?.grams;
    expect([await left(), (await staged.page(batchId)).seedsGrams]).toEqual([7.5, 2.5]);
    await staged.reverse(entryId);
    expect(await left()).toBe(10);
  });
  it('is refused for more seed than the store holds, and nothing is written', async () => {
    const sourceId = await staged.stock.addSource(staged.plantId);
    await nursery
      .as('grower')
      .sources.receiveSeed(sent({ sourceId, kind: 'bought' as const, grams: 3, happenedOn: '2026-02-01' }));
    const body = { ...staged.startBody(versionId), sourceId, seedGrams: 3.5 };
    expect(await refusalOf(staged.propagation.startBatch(sent(body)))).toMatchObject({
      code: 'more-seed-than-stored',
      field: 'seedGrams',
    });
    expect(await refusalOf(staged.page(body.batchId))).toMatchObject({ code: 'not-found' });
  });
  it('keeps a usual beside the cautious yield', async () => {
    const { batchId } = await staged.startUnder(versionId, { cautiousUnits: 50, usualUnits: 65 });
    expect(await staged.page(batchId)).toMatchObject({ cautiousUnits: 50, usualUnits: 65 });
  });
  it('takes the cautious yield for the usual one where nobody says another', async () => {
    const { batchId } = await staged.startUnder(versionId, { cautiousUnits: 50 });
    expect(await staged.page(batchId)).toMatchObject({ cautiousUnits: 50, usualUnits: 50 });
  });
  it('writes no yield by itself', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await staged.page(batchId)).toMatchObject({ cautiousUnits: 0, usualUnits: 0, readyOn: null });
  });

  it('is refused for an unknown version', async () =>
    expect(await refusedStart({ protocolVersionId: randomUUID() })).toMatchObject({
      code: 'not-found',
      field: 'protocolVersionId',
    }));
  it('is refused for the protocol of another plant, named', async () => {
    const plantId = await staged.stock.addPlant({ code: 'MOFI', name: 'Monarda fistulosa' });
    const other = await staged.addProtocol({ plantId });
    expect(await refusedStart({ protocolVersionId: other.versionId })).toMatchObject({
      code: 'protocol-of-other-plant',
      field: 'protocolVersionId',
      data: { protocolPlant: 'Monarda fistulosa', plant: 'Asclepias tuberosa' },
    });
  });
  it('is refused for the protocol of another method', async () => {
    expect(await refusedStart({ method: 'cutting' })).toMatchObject({
      code: 'protocol-of-other-method',
      field: 'protocolVersionId',
      data: { protocolMethod: 'seed', method: 'cutting' },
    });
  });
  it('is refused in a stage that the protocol lacks', async () => {
    expect(await refusedStart({ stagePosition: 5 })).toMatchObject({
      code: 'stage-not-in-protocol',
      field: 'stagePosition',
      data: { position: 5, stages: ['stratification', 'sowing', 'emergence', 'growing-on', 'ready'] },
    });
  });
  it('is refused in a stage without a protocol', async () => {
    expect(
      await refusedStart({ protocolVersionId: null, unit: 'cell', containerId: staged.trayId, stagePosition: 1 }),
    ).toMatchObject({ code: 'invalid-input', data: { issues: [{ path: 'stagePosition' }] } });
  });
  it('is refused without a unit where no protocol says one', async () => {
    expect(await refusedStart({ protocolVersionId: null })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'unit', problem: 'required' }] },
    });
  });
  it('is refused for a usual yield below the cautious one, with both numbers', async () => {
    expect(await refusedStart({ cautiousUnits: 60, usualUnits: 50 })).toMatchObject({
      code: 'usual-below-cautious',
      field: 'usualUnits',
      data: { usual: 50, cautious: 60 },
    });
  });
  it('is refused for a usual yield above the cells that were sown', async () => {
    expect(await refusedStart({ cautiousUnits: 60, usualUnits: 101 })).toMatchObject({
      code: 'usual-over-units',
      field: 'usualUnits',
      data: { usual: 101, standing: 100, unit: 'cell' },
    });
  });
  it.each([
    ['none', 0],
    ['less than none', -1],
    ['no number', Number.NaN],
  ])('is refused for %s grams of seed', async (_what, seedGrams) => {
    expect(await refusedStart({ seedGrams })).toMatchObject({
      code: 'invalid-input',
      data: { issues: [{ path: 'seedGrams' }] },
    });
  });
  it('is refused for those who only look', async () => {
    expect(
      await refusalOf(nursery.as('viewer').propagation.startBatch(sent(staged.startBody(versionId)))),
    ).toMatchObject({ code: 'not-allowed' });
  });
  it('is open to the crew', async () => {
    expect((await nursery.as('crew').propagation.startBatch(sent(staged.startBody(versionId)))).units).toBe(100);
  });
});
