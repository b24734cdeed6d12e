import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { taskStory } from './story.ts';

describe('tasks of gardens, places, lots and sources', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let gardens: GardenStory;
  let story: Awaited<ReturnType<typeof taskStory>>;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    gardens = await gardenStory(nursery);
    story = await taskStory(nursery);
    return () => nursery.close();
  });
  afterAll(() => database.drop());

  it('an order is pulled, planted and followed up, and each step brings the one before back when it is taken back', async () => {
    const lotId = await gardens.addLot({ units: 20 });
    const { orderId, lineId } = await gardens.order([{ units: 8 }]);
    expect(await story.told()).toEqual(['pull 2026-06-01', 'plant-out 2026-06-01']);
    expect((await story.list({ kinds: ['pull'] })).rows[0]).toMatchObject({
      subject: { kind: 'order', id: orderId },
      units: 8,
      places: [{ code: 'BENCH' }],
    });
    const pulled = await gardens.pull(orderId, [{ lineId, lotId, units: 8 }]);
    expect(await story.told()).toEqual(['plant-out 2026-06-01']);
    const planted = await nursery
      .as('crew')
      .gardens.plantOrder(sent({ orderId, happenedOn: '2026-05-20', rows: [{ lineId, lotId, units: 8 }] }));
    expect(await story.told()).toEqual(['follow-up 2026-06-19']);
    await story.takeBack(planted.entryId);
    expect(await story.told()).toEqual(['plant-out 2026-06-01']);
    await story.takeBack(pulled.entryId);
    expect(await story.told()).toEqual(['pull 2026-06-01', 'plant-out 2026-06-01']);
  });

  it('an order for pickup is handed over, and a cancelled one asks for nothing', async () => {
    await gardens.addLot({ units: 20 });
    const { orderId } = await gardens.order([{ units: 8 }], { kind: 'pickup' });
    expect(await story.told()).toEqual(['pull 2026-06-01', 'hand-over 2026-06-01']);
    await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    expect(await story.told()).toEqual([]);
  });

  it('an autumn planting is followed up after the last-emergence day, by a tick', async () => {
    nursery.clock.set('2026-09-20');
    const lotId = await gardens.addLot({ units: 20 });
    const { orderId, lineId } = await gardens.order([{ units: 8 }], { dueOn: '2026-09-20' });
    await gardens.pull(orderId, [{ lineId, lotId, units: 8 }]);
    await nursery
      .as('crew')
      .gardens.plantOrder(sent({ orderId, happenedOn: '2026-09-20', rows: [{ lineId, lotId, units: 8 }] }));
    const [visit] = (await story.list({ kinds: ['follow-up'] })).rows;
    expect(visit).toMatchObject({ dueOn: '2027-06-10', units: 8, details: { dormant: ['Asclepias tuberosa'] } });
    nursery.clock.set('2027-06-11');
    await story.tick(visit?.key ?? '');
    expect(await story.told('follow-up')).toEqual([]);
  });

  it('a lot must leave its pot within the notice, and is off the list when its plants have left', async () => {
    const lotId = await gardens.addLot({ units: 20, plantByOn: '2026-06-15' });
    expect(await story.told()).toEqual(['leave-the-pot 2026-06-15']);
    const { entryId } = await nursery
      .as('crew')
      .stock.sellFromLot(sent({ lotId, units: 20, happenedOn: '2026-05-20' }));
    expect(await story.told()).toEqual([]);
    await story.takeBack(entryId);
    expect(await story.told()).toEqual(['leave-the-pot 2026-06-15']);
  });

  it('mother stock is not asked to leave', async () => {
    const lotId = await gardens.addLot({ units: 20, plantByOn: '2026-06-15' });
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [lotId], reason: 'mother-stock' as const, happenedOn: '2026-05-20' }));
    expect(await story.told()).toEqual([]);
  });

  it('a place is covered, baited and uncovered year by year, by ticks that can be taken back', async () => {
    await story.setDays(gardens.placeId, { cover: '11-15', bait: '10-20', uncover: '03-20' });
    expect(await story.told()).toEqual([
      'vole-bait 2026-10-20',
      'cover 2026-11-15',
      'uncover 2027-03-20',
      'vole-bait 2027-10-20',
      'cover 2027-11-15',
    ]);
    nursery.clock.set('2026-11-14');
    const key = `cover/${gardens.placeId}/2026`;
    await story.tick(key);
    expect(await story.told('cover')).toEqual(['cover 2027-11-15']);
    expect((await story.list({ kinds: ['cover'], until: '2026-12-01' })).rows).toMatchObject([
      { key, doneOn: '2026-11-14', doneBy: 'Test crew' },
    ]);
    await nursery.as('crew').planning.untickTask(sent({ key }));
    expect(await story.told('cover')).toEqual(['cover 2026-11-15', 'cover 2027-11-15']);
  });

  it('what was not up at the spring count is asked about at its last-emergence day, until it is counted again', async () => {
    const lotId = await gardens.addLot({ units: 20 });
    const counted = async (upUnits: number, notUpUnits: number) =>
      (
        await nursery.as('crew').stock.countSpring(
          sent({
            counts: [{ lotId, placeId: gardens.placeId, upUnits, deadUnits: 0, notUpUnits }],
            happenedOn: '2026-05-20',
          }),
        )
      ).entryId;
    const first = await counted(14, 6);
    expect((await story.list()).rows).toMatchObject([
      { kind: 'ask-not-yet-up', dueOn: '2026-06-11', units: 6, places: [{ code: 'BENCH' }] },
    ]);
    const again = await counted(20, 0);
    expect(await story.told()).toEqual([]);
    await story.takeBack(again);
    expect(await story.told()).toEqual(['ask-not-yet-up 2026-06-11']);
    await story.takeBack(first);
    expect(await story.told()).toEqual([]);
  });

  it('a test whose replicates disagree is to be repeated, until a later one agrees or it is withdrawn', async () => {
    const add = (testedOn: string, toRepeat: boolean) =>
      nursery.sql(
        `INSERT INTO viability_test (nursery_id, id, source_id, tested_on, method, seeds_per_replicate, replicates, mean_share, to_repeat)
      VALUES ($1, $2, $3, $4, 'germination', 100, '{80,60}', 0.7, $5)`,
        [nursery.nurseryId, randomUUID(), gardens.sourceId, testedOn, toRepeat],
      );
    await add('2026-05-01', true);
    expect(await story.told()).toEqual(['test-to-repeat 2026-05-01']);
    await add('2026-05-10', false);
    expect(await story.told()).toEqual([]);
    await nursery.sql(
      `UPDATE viability_test SET withdrawn_at = '2026-05-11' WHERE nursery_id = $1 AND tested_on = '2026-05-10'`,
      [nursery.nurseryId],
    );
    expect(await story.told()).toEqual(['test-to-repeat 2026-05-01']);
  });
});
