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

describe('a stage of a batch', () => {
  it('begins when somebody says so', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await staged.begin(batchId, 1, '2026-04-02')).toMatchObject({ stage: 'sowing' });
    expect(await staged.stage(batchId)).toEqual({
      position: 2,
      kind: 'emergence',
      begunOn: '2026-04-02',
      dueOn: '2026-04-16',
      lateOn: '2026-04-30',
    });
  });
  it('begins with the first count above zero', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1 });
    await staged.count(batchId, 0, '2026-03-08');
    await staged.count(batchId, 12, '2026-03-12');
    await staged.count(batchId, 60, '2026-03-20');
    expect(await staged.stage(batchId)).toMatchObject({
      kind: 'growing-on',
      begunOn: '2026-03-12',
      dueOn: '2026-05-11',
    });
  });
  it('is what it was when the count is taken back', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1 });
    const { entryId } = await staged.count(batchId, 12, '2026-03-12');
    await staged.reverse(entryId);
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'emergence', begunOn: '2026-03-01' });
  });
  it('after pricking out begins with the first potting', async () => {
    const flat = await staged.addProtocol({
      label: 'flat',
      startUnit: 'tray',
      stages: [
        { kind: 'sowing', days: [0, 0, 0] },
        { kind: 'emergence', days: [7, 14, 40] },
        { kind: 'pricking-out', days: [0, 0, 0] },
        { kind: 'growing-on', days: [40, 50, 60] },
      ],
    });
    const { batchId } = await staged.startUnder(flat.versionId, { units: 2, containerId: staged.flatId });
    await staged.count(batchId, 80, '2026-03-20');
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'emergence' });
    const { entryId } = await staged.pot(batchId, 0, 30, '2026-04-10');
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'growing-on', begunOn: '2026-04-10' });
    await staged.reverse(entryId);
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'emergence', begunOn: '2026-03-01' });
  });
  it('goes back by itself when its beginning is taken back', async () => {
    const { batchId } = await staged.startUnder(versionId);
    const { entryId } = await staged.begin(batchId, 1, '2026-04-02');
    await staged.reverse(entryId);
    expect(await staged.stage(batchId)).toMatchObject({ position: 0, kind: 'stratification', begunOn: '2026-03-01' });
  });
  it('gets another day when it is said again', async () => {
    const { batchId } = await staged.startUnder(versionId);
    await staged.begin(batchId, 1, '2026-04-02');
    await staged.begin(batchId, 1, '2026-03-30');
    expect(await staged.stage(batchId)).toMatchObject({ kind: 'emergence', begunOn: '2026-03-30' });
  });
  it('is none any more when the start is taken back', async () => {
    const { batchId, entryId } = await staged.startUnder(versionId);
    await staged.reverse(entryId);
    expect(await staged.stage(batchId)).toMatchObject({ position: null, kind: null });
  });
  it('is kept over a second winter, late a year on', async () => {
    const { batchId } = await staged.startUnder(versionId, { stagePosition: 1 });
    await staged.propagation.keepForSecondWinter(sent({ batchId, happenedOn: '2026-05-02' }));
    expect(await staged.stage(batchId)).toEqual({
      position: 2,
      kind: 'emergence',
      begunOn: '2026-03-01',
      dueOn: '2027-03-15',
      lateOn: '2027-03-29',
    });
  });
  it('is late on its page and in the list once its long duration is over', async () => {
    const { batchId, code } = await staged.startUnder(versionId, { stagePosition: 1 });
    const { protocol } = await staged.page(batchId);
    expect(protocol?.stages.map(({ state }) => state)).toEqual(['done', 'done', 'late', 'coming', 'coming']);
    const { rows } = await staged.propagation.listBatches({ text: code });
    expect(rows[0]).toMatchObject({
      stageKind: 'emergence',
      stageBegunOn: '2026-03-01',
      stageDueOn: '2026-03-15',
      stageLate: true,
    });
  });
  it('orders the list by the day it is due', async () => {
    const plant = await stagesOf(nursery, { code: 'ASSY', name: 'Asclepias syriaca' });
    const own = await plant.addProtocol();
    const late = await plant.startUnder(own.versionId, { stagePosition: 2 });
    const soon = await plant.startUnder(own.versionId);
    const { rows } = await staged.propagation.listBatches({ plantId: plant.plantId, sort: 'stageDue' });
    expect(rows.map(({ batchId }) => batchId)).toEqual([late.batchId, soon.batchId]);
  });

  it('is refused before the batch began', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await refusalOf(staged.begin(batchId, 1, '2026-02-28'))).toMatchObject({
      code: 'day-too-early',
      field: 'happenedOn',
      data: { earliest: '2026-03-01' },
    });
  });
  it('is refused on a day to come', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await refusalOf(staged.begin(batchId, 1, '2026-05-21'))).toMatchObject({ code: 'day-in-future' });
  });
  it('is refused before the one before it began, with both days', async () => {
    const { batchId } = await staged.startUnder(versionId);
    await staged.begin(batchId, 1, '2026-04-02');
    expect(await refusalOf(staged.begin(batchId, 3, '2026-04-01'))).toMatchObject({
      code: 'stage-before-earlier',
      field: 'happenedOn',
      data: { stage: 'growing-on', day: '2026-04-01', earlier: 'emergence', earlierOn: '2026-04-02' },
    });
  });
  it('is refused after a later one that somebody began', async () => {
    const { batchId } = await staged.startUnder(versionId);
    await staged.begin(batchId, 3, '2026-04-20');
    expect(await refusalOf(staged.begin(batchId, 2, '2026-04-21'))).toMatchObject({
      code: 'stage-after-later',
      field: 'happenedOn',
      data: { stage: 'emergence', later: 'growing-on', laterOn: '2026-04-20' },
    });
  });
  it('is refused where the protocol lacks it, naming those it has', async () => {
    const { batchId } = await staged.startUnder(versionId);
    expect(await refusalOf(staged.begin(batchId, 7, '2026-04-02'))).toMatchObject({
      code: 'stage-not-in-protocol',
      field: 'position',
      data: { position: 7, stages: ['stratification', 'sowing', 'emergence', 'growing-on', 'ready'] },
    });
  });
  it('is refused for a batch without a protocol', async () => {
    const { batchId } = await staged.start();
    expect(await refusalOf(staged.begin(batchId, 0, '2026-04-02'))).toMatchObject({ code: 'batch-without-protocol' });
  });
  it('is refused once the batch is closed', async () => {
    const { batchId } = await staged.startUnder(versionId);
    await staged.propagation.closeBatch(sent({ batchId, writeOffCause: 'failed', happenedOn: '2026-05-01' }));
    expect(await refusalOf(staged.begin(batchId, 1, '2026-05-02'))).toMatchObject({
      code: 'batch-closed',
      data: { closedOn: '2026-05-01' },
    });
  });
  it('is refused for another nursery’s batch as if there were none', async () => {
    const { batchId } = await staged.startUnder(versionId);
    const other = await openNursery(database);
    const answer = await refusalOf(
      other.as('grower').propagation.beginBatchStage(sent({ batchId, position: 1, happenedOn: '2026-04-02' })),
    );
    await other.close();
    expect(answer).toMatchObject({ code: 'not-found', field: 'batchId' });
  });
  it('is begun by the crew, and not by those who only look', async () => {
    const { batchId } = await staged.startUnder(versionId);
    const body = { batchId, position: 1, happenedOn: '2026-04-02' };
    expect(await refusalOf(nursery.as('viewer').propagation.beginBatchStage(sent(body)))).toMatchObject({
      code: 'not-allowed',
    });
    expect(await nursery.as('crew').propagation.beginBatchStage(sent(body))).toMatchObject({ stage: 'sowing' });
  });
});
