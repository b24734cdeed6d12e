import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { taskStory } from './story.ts';

describe('the list of tasks and its ticks', () => {
  let database: TestDatabase;
  let server: Awaited<ReturnType<typeof openServer>>;
  let nursery: TestNursery;
  let story: Awaited<ReturnType<typeof taskStory>>;
  let key: string;
  beforeAll(async () => {
    database = await createDatabase();
    server = await openServer(database, { day: '2026-11-20' });
  });
  beforeEach(async () => {
    server.clock.set('2026-11-20');
    nursery = { ...(await server.addNursery()), close: async () => {} };
    story = await taskStory(nursery);
    await story.setDays(story.benchId, { cover: '11-15', bait: '12-01' });
    key = `cover/${story.benchId}/2026`;
  });
  afterAll(async () => {
    await server.close();
    await database.drop();
  });

  it('says what is overdue first, then day by day and place by place', async () => {
    const tenth = await story.stock.addPlace({ code: 'B10' });
    await story.setDays(tenth, { bait: '12-01', uncover: '11-25' });
    const list = await story.list({ until: '2026-12-31' });
    expect(
      list.rows.map((task) => `${task.kind} ${task.dueOn} ${task.places[0]?.code}${task.isOverdue ? ' overdue' : ''}`),
    ).toEqual([
      'cover 2026-11-15 B2 overdue',
      'uncover 2026-11-25 B10',
      'vole-bait 2026-12-01 B2',
      'vole-bait 2026-12-01 B10',
    ]);
    expect(list).toMatchObject({
      total: 4,
      overdue: 1,
      kinds: [
        { kind: 'cover', tasks: 1 },
        { kind: 'vole-bait', tasks: 2 },
        { kind: 'uncover', tasks: 1 },
      ],
    });
  });

  it('answers page by page', async () => {
    const { rows, total } = await nursery
      .as('viewer')
      .planning.listTasks({ from: '2026-11-20', until: '2026-12-31', page: 2, perPage: 1 });
    expect({ total, kinds: rows.map(({ kind }) => kind) }).toEqual({ total: 2, kinds: ['vole-bait'] });
  });

  it('holds a place with all that lies in it', async () => {
    const house = await story.stock.addPlace({ code: 'H1', kind: 'house' });
    const bay = await story.stock.addPlace({ code: 'H1a', kind: 'bay' });
    await nursery.sql('UPDATE place SET parent_id = $3 WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      bay,
      house,
    ]);
    await story.setDays(bay, { cover: '11-30' });
    expect((await story.list({ placeId: house, until: '2026-12-31' })).rows.map(({ subject }) => subject.code)).toEqual(
      ['H1a'],
    );
  });

  it('is read by everybody and ticked by whoever works in the field', async () => {
    expect((await refusalOf(story.tick(key, '2026-11-20', 'viewer'))).code).toBe('not-allowed');
    await story.tick(key);
    expect(await story.told('cover')).not.toContain('cover 2026-11-15');
  });

  it('takes a second tick for the first, whoever makes it', async () => {
    await story.tick(key, '2026-11-18');
    expect(await story.tick(key, '2026-11-20', 'owner')).toEqual({ key, doneOn: '2026-11-18' });
    expect(await nursery.sql('SELECT 1 FROM task_tick WHERE nursery_id = $1', [nursery.nurseryId])).toHaveLength(1);
  });

  it('takes a tick back more than once without harm, and can be ticked anew', async () => {
    const untick = () => nursery.as('crew').planning.untickTask(sent({ key }));
    await untick();
    await story.tick(key, '2026-11-18');
    await untick();
    await untick();
    expect(await story.told('cover')).toContain('cover 2026-11-15');
    expect(await story.tick(key, '2026-11-19')).toEqual({ key, doneOn: '2026-11-19' });
  });

  it('refuses a day to come, and one before it can have been done', async () => {
    expect(await refusalOf(story.tick(key, '2026-11-21'))).toMatchObject({ code: 'day-in-future', field: 'doneOn' });
    expect(await refusalOf(story.tick(key, '2026-05-16'))).toMatchObject({
      code: 'day-too-early',
      field: 'doneOn',
      data: { earliest: '2026-05-17' },
    });
  });

  it('refuses a name that is no task of this nursery', async () => {
    const stranger = { ...(await server.addNursery()), close: async () => {} };
    for (const named of [key, `cover/${randomUUID()}/2026`, `cover/${story.benchId}/1999`]) {
      expect(
        await refusalOf(stranger.as('owner').planning.tickTask(sent({ key: named, doneOn: '2026-11-20' }))),
      ).toMatchObject({ code: 'not-found', data: { what: 'task' }, field: 'key' });
      expect(await refusalOf(stranger.as('owner').planning.untickTask(sent({ key: named })))).toMatchObject({
        code: 'not-found',
        field: 'key',
      });
    }
    expect(await refusalOf(story.tick('mow/the-lawn/2026'))).toMatchObject({ code: 'invalid-input' });
  });

  it('refuses to tick what an entry ends', async () => {
    await story.start({ on: '2026-11-01', stagePosition: 2 });
    const [count] = (await story.list({ kinds: ['count'] })).rows;
    expect(await refusalOf(story.tick(count?.key ?? ''))).toMatchObject({
      code: 'task-ends-by-entry',
      data: { kind: 'count', of: count?.subject.code },
    });
  });

  it('refuses days in the wrong order', async () => {
    expect(await refusalOf(story.list({ from: '2026-12-01', until: '2026-11-30' }))).toMatchObject({
      code: 'invalid-input',
    });
  });
});
