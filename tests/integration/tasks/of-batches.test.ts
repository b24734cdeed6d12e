import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { taskStory } from './story.ts';

describe('tasks of batches and of what was potted from them', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: Awaited<ReturnType<typeof taskStory>>;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database, { day: '2026-03-01' });
    story = await taskStory(nursery);
    return () => nursery.close();
  });
  afterAll(() => database.drop());

  it('a batch is taken out of the cold when its next stage is said to have begun, and again when that is taken back', async () => {
    const { batchId } = await story.start();
    expect(await story.told()).toEqual(['take-out-of-cold 2026-03-31', 'prick-out 2026-05-04']);
    nursery.clock.set('2026-03-31');
    const { entryId } = await story.propagation.beginBatchStage(
      sent({ batchId, position: 1, happenedOn: '2026-03-31' }),
    );
    expect(await story.told()).toEqual(['count 2026-04-07', 'prick-out 2026-05-04']);
    await story.takeBack(entryId);
    expect(await story.told()).toEqual(['take-out-of-cold 2026-03-31', 'prick-out 2026-05-04']);
  });

  it('a count moves the next one on, and taking it back brings it up again', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-03-09');
    expect(await story.told('count')).toEqual(['count 2026-03-08']);
    const { entryId } = await story.count(batchId, 0, '2026-03-09');
    expect(await story.told('count')).toEqual(['count 2026-03-16']);
    await story.takeBack(entryId);
    expect(await story.told('count')).toEqual(['count 2026-03-08']);
  });

  it('is not counted for coming up any more once it came up, but pricked out', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-03-10');
    await story.count(batchId, 12, '2026-03-10');
    expect(await story.told()).toEqual(['prick-out 2026-03-30']);
  });

  it('potting ends the pricking out and schedules the lot forward from its potting day', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-04-01');
    await story.count(batchId, 60, '2026-03-10');
    const { lotId, entryId } = await story.pot(batchId, '2026-04-01');
    expect(await story.told()).toEqual(['harden 2026-05-11', 'check-root-ball 2026-05-18']);
    expect((await story.list()).rows[0]).toMatchObject({
      subject: { kind: 'lot', id: lotId },
      units: 40,
      places: [{ code: 'B2' }],
      lateOn: '2026-05-31',
    });
    await story.takeBack(entryId);
    expect(await story.told()).toEqual(['prick-out 2026-03-30']);
  });

  it('a lot split off keeps the days of its potting, and one potted up has none', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-04-10');
    await story.count(batchId, 60, '2026-03-10');
    const { lotId } = await story.pot(batchId, '2026-04-01');
    const { stock } = nursery.as('grower');
    await stock.splitLot(
      sent({ lotId, happenedOn: '2026-04-05', into: [{ lotId: randomUUID(), placeId: story.benchId, units: 10 }] }),
    );
    expect(await story.told('harden')).toEqual(['harden 2026-05-11', 'harden 2026-05-11']);
    await stock.potUpLot(
      sent({
        lotId,
        happenedOn: '2026-04-06',
        into: [
          {
            lotId: randomUUID(),
            containerId: await story.stock.addContainer({ code: 'big' }),
            placeId: story.benchId,
            units: 30,
          },
        ],
      }),
    );
    expect(await story.told('harden')).toEqual(['harden 2026-05-11']);
  });

  it('a root ball that holds ends the check and the hardening; one that does not is looked at again', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-05-18');
    await story.count(batchId, 60, '2026-03-10');
    const { lotId } = await story.pot(batchId, '2026-04-01');
    const look = (result: 'holds' | 'not-yet') =>
      nursery
        .as('crew')
        .stock.observeMany(sent({ lotIds: [lotId], kind: 'root-ball' as const, result, happenedOn: '2026-05-18' }));
    const { entryId } = await look('not-yet');
    expect(await story.told('check-root-ball')).toEqual(['check-root-ball 2026-06-01']);
    await story.takeBack(entryId);
    expect(await story.told('check-root-ball')).toEqual(['check-root-ball 2026-05-18']);
    await look('holds');
    expect(await story.told('check-root-ball', 'harden')).toEqual([]);
  });

  it('a stage past its long end is raised, ticked as seen, and gone when the batch is kept for a second winter', async () => {
    const { batchId } = await story.start({ stagePosition: 2 });
    nursery.clock.set('2026-03-30');
    await story.count(batchId, 0, '2026-03-30');
    expect(await story.told('stage-late')).toEqual(['stage-late 2026-03-30']);
    const [late] = (await story.list({ kinds: ['stage-late'] })).rows;
    await story.tick(late?.key ?? '');
    expect(await story.told('stage-late')).toEqual([]);
    await nursery.as('crew').planning.untickTask(sent({ key: late?.key ?? '' }));
    const { entryId } = await story.propagation.keepForSecondWinter(sent({ batchId, happenedOn: '2026-03-30' }));
    expect(await story.told('stage-late')).toEqual([]);
    await story.takeBack(entryId);
    expect(await story.told('stage-late')).toEqual(['stage-late 2026-03-30']);
  });

  it('nothing is asked of a batch without a protocol, and nothing of one that is closed', async () => {
    await story.start({ protocolVersionId: null });
    const { batchId } = await story.start();
    await story.propagation.closeBatch(sent({ batchId, happenedOn: '2026-03-01', writeOffCause: 'failed' as const }));
    expect(await story.told()).toEqual([]);
  });
});
