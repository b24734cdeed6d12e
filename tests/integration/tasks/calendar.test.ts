// The feed as a phone reads it: over HTTP without a session, by a parser that is not the writer's.
import { randomUUID } from 'node:crypto';
import ICAL from 'ical.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { gardenStory } from '../../support/gardens.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { taskStory } from './story.ts';

interface Entry {
  uid: string;
  on: string;
  isDay: boolean;
  title: string;
  at: string | null;
  words: string | null;
  stamp: string;
}

// The reader knows the names of calendars (RFC 7986) no better than any property, and leaves its signs as they are, until it is told that they are texts.
Object.assign(ICAL.design.icalendar.property, { name: { defaultType: 'text' } });

function read(text: string): { name: string; entries: Entry[] } {
  const calendar = new ICAL.Component(ICAL.parse(text) as [string, unknown[], unknown[]]);
  return {
    name: String(calendar.getFirstPropertyValue('name')),
    entries: calendar.getAllSubcomponents('vevent').map((component) => {
      const event = new ICAL.Event(component);
      return {
        uid: event.uid,
        on: event.startDate.toString(),
        isDay: event.startDate.isDate,
        title: event.summary,
        at: event.location,
        words: event.description,
        stamp: String(component.getFirstPropertyValue('dtstamp')),
      };
    }),
  };
}

describe('the calendar of tasks', () => {
  let database: TestDatabase;
  let server: Awaited<ReturnType<typeof openServer>>;
  let app: Awaited<ReturnType<typeof createApp>>;
  let nursery: TestNursery;
  let story: Awaited<ReturnType<typeof taskStory>>;
  beforeAll(async () => {
    database = await createDatabase();
    server = await openServer(database, { day: '2027-11-20' });
    app = await createApp({ databaseUrl: database.url, clock: server.clock.now });
  });
  beforeEach(() => open());
  afterAll(async () => {
    await app.close();
    await server.close();
    await database.drop();
  });

  async function open(zone = 'America/Chicago', day = '2027-11-20') {
    server.clock.set(day);
    nursery = { ...(await server.addNursery({ zone })), close: async () => {} };
    story = await taskStory(nursery);
  }
  const address = async (role: 'owner' | 'grower' | 'viewer' = 'owner') =>
    (await nursery.as(role).people.createCalendarAddress(sent({}))).path;
  const ask = (url: string, headers: Record<string, string> = {}) => app.inject({ method: 'GET', url, headers });
  const entries = async (path: string) => read((await ask(path)).body).entries;

  it('holds each open task as a whole day, with what, where and for which plant', async () => {
    await story.setDays(story.benchId, { bait: '12-01' });
    await nursery.sql(`UPDATE place SET name = 'Long bench; east, by the well' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      story.benchId,
    ]);
    const { code } = await story.start({ on: '2027-11-10', stagePosition: 2 });
    const { plantName } = (await story.list({ kinds: ['count'] })).rows[0] ?? {};
    const held = await entries(await address());
    expect(held.every(({ isDay }) => isDay)).toBe(true);
    expect(held[0]).toMatchObject({
      on: '2027-11-17',
      title: `Count what has come up of ${code} (${plantName})`,
      at: 'B2 (Long bench; east, by the well)',
      stamp: '2027-11-20T17:00:00Z',
    });
    expect(held.find(({ title }) => title.startsWith('Bait'))).toMatchObject({
      on: '2027-12-01',
      words: expect.stringContaining('the label is the law') as string,
    });
  });

  it('keeps the names of tasks, whatever else changes, and tells every one by a name of its own', async () => {
    await story.setDays(story.benchId, { cover: '12-15', uncover: '03-01' });
    const path = await address();
    const before = await entries(path);
    server.clock.set('2027-11-25');
    await story.setDays(story.benchId, { cover: '12-20', uncover: '03-01' });
    await story.start({ on: '2027-11-24', stagePosition: 2 });
    const after = await entries(path);
    expect(after.map(({ uid }) => uid)).toEqual(expect.arrayContaining(before.map(({ uid }) => uid)));
    expect(new Set(after.map(({ uid }) => uid)).size).toBe(after.length);
    expect(after.find(({ uid }) => uid.startsWith(`cover.${story.benchId}.2027@`))?.on).toBe('2027-12-20');
  });

  it('leaves out what was ticked', async () => {
    await story.setDays(story.benchId, { cover: '11-25' });
    const path = await address();
    expect((await entries(path)).map(({ on }) => on)).toEqual(['2027-11-25', '2028-11-25']);
    await story.tick(`cover/${story.benchId}/2027`);
    expect((await entries(path)).map(({ on }) => on)).toEqual(['2028-11-25']);
  });

  it.each([
    ['America/Chicago', '2027-11-06T23:30:00-05:00', '2027-11-06'],
    ['America/Chicago', '2028-03-12T03:30:00-05:00', '2028-03-12'],
    ['Pacific/Auckland', '2027-09-26T03:30:00+13:00', '2027-09-26'],
    ['Europe/Lisbon', '2027-12-31T23:59:00Z', '2027-12-31'],
    ['Pacific/Kiritimati', '2028-02-28T10:30:00Z', '2028-02-29'],
  ])('in %s at %s says the nursery’s own day %s and the days after it, none slipped', async (zone, instant, today) => {
    await open(zone, instant);
    const days = ['02-29', '03-12', '09-26', '11-07', '12-31', '01-01'];
    for (const cover of days) await story.setDays(await story.stock.addPlace({ code: `on-${cover}` }), { cover });
    const listed = (
      await nursery.as('viewer').planning.listTasks({ from: today, until: '2029-03-01', kinds: ['cover'] })
    ).rows;
    const held = await entries(await address());
    for (const { on, title, isDay } of held) {
      const day = on.slice(5) === '02-28' ? '02-29' : on.slice(5);
      expect({ title, isDay }).toEqual({ title: `Cover on-${day} for winter`, isDay: true });
    }
    const ahead = (rows: { on: string }[]) =>
      rows
        .map(({ on }) => on)
        .filter((on) => on >= today)
        .sort();
    expect(ahead(held).slice(0, 6)).toEqual(ahead(listed.map(({ dueOn }) => ({ on: dueOn }))).slice(0, 6));
  });

  it.each(['Pacific/Auckland', 'America/Los_Angeles', 'UTC'])(
    'is the same whatever zone the server itself stands in: %s',
    async (zone) => {
      await story.setDays(story.benchId, { cover: '02-29', uncover: '12-31' });
      const path = await address();
      const own = process.env.TZ;
      process.env.TZ = zone;
      const held = await entries(path).finally(
        () => void (own === undefined ? delete process.env.TZ : (process.env.TZ = own)),
      );
      expect(held.map(({ on }) => on)).toEqual(['2027-12-31', '2028-02-29']);
    },
  );

  it('is folded at 75 octets with its signs whole, and ends its lines as the standard wants', async () => {
    await nursery.sql(
      `UPDATE place SET cover_md = '12-01', code = 'ÑANDÚ', name = $3 WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, story.benchId, '🌱 größtes Gewächshaus, südlich; “hinten” \\ '.repeat(2).trim()],
    );
    const { body } = await ask(await address());
    const lines = body.split('\r\n');
    expect(body.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(read(body).entries[0]).toMatchObject({
      title: 'Cover ÑANDÚ for winter',
      at: `ÑANDÚ (${'🌱 größtes Gewächshaus, südlich; “hinten” \\ '.repeat(2).trim()})`,
    });
  });

  it('carries the nursery’s name, whatever signs are in it, and speaks Spanish when its address asks for it', async () => {
    await nursery.sql(`UPDATE nursery SET name = 'Fen, Hollow; & \\ Sons' WHERE id = $1`, [nursery.nurseryId]);
    await story.setDays(story.benchId, { uncover: '12-01' });
    const path = await address();
    expect(read((await ask(path)).body).name).toBe('Fen, Hollow; & \\ Sons: tasks');
    expect(read((await ask(`${path}?language=es`)).body)).toMatchObject({
      name: 'Fen, Hollow; & \\ Sons: tareas',
      entries: [{ title: 'Destapar B2' }, {}],
    });
  });

  it('says nothing of a client but the code of the order', async () => {
    const gardens = await gardenStory({ ...nursery });
    await gardens.addLot({ units: 20, pottedOn: '2027-10-01' });
    const { code } = await gardens.order([{ units: 8 }], { dueOn: '2027-12-01' });
    const { body } = await ask(await address());
    expect(read(body).entries.map(({ title }) => title)).toContain(`Pull 8 plants for ${code}`);
    expect(body).not.toMatch(/Fen Hollow|South slope/);
  });

  it('needs no cookie and sets none, and may be kept a while by the phone alone', async () => {
    const { statusCode, headers } = await ask(await address('viewer'));
    expect({
      statusCode,
      type: headers['content-type'],
      kept: headers['cache-control'],
      cookie: headers['set-cookie'],
      robots: headers['x-robots-tag'],
    }).toEqual({
      statusCode: 200,
      type: 'text/calendar; charset=utf-8',
      kept: 'private, max-age=900',
      cookie: undefined,
      robots: 'noindex',
    });
    expect(headers['x-ratelimit-limit']).toBeDefined();
  });

  it('is sent again only when something changed, or the day', async () => {
    const path = await address();
    const { headers } = await ask(path);
    const again = () => ask(path, { 'if-none-match': headers.etag as string });
    expect(await again()).toMatchObject({ statusCode: 304, body: '' });
    await story.start({ on: '2027-11-20' });
    expect((await again()).statusCode).toBe(200);
    server.clock.set('2027-11-21');
    expect((await ask(path, { 'if-none-match': headers.etag as string })).statusCode).toBe(200);
  });

  it('is kept as a hash alone, of a secret with 256 bits', async () => {
    const path = await address();
    const secret = path.slice('/calendar/'.length, -'.ics'.length);
    expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
    const stored = await nursery.sql<{ all: string }>(
      `SELECT (SELECT string_agg(t::text, ' ') FROM token t WHERE kind = 'calendar') || (SELECT coalesce(string_agg(c::text, ' '), '') FROM command c) AS all`,
    );
    expect(stored[0]?.all).not.toContain(secret);
    expect(stored[0]?.all).not.toContain(Buffer.from(secret, 'base64url').toString('hex'));
  });

  it('answers 404 once it is revoked, and once another address is made; and to whoever guesses', async () => {
    const first = await address('grower');
    const other = await address('owner');
    const second = await address('grower');
    expect(second).not.toBe(first);
    expect((await ask(first)).statusCode).toBe(404);
    expect((await ask(second)).statusCode).toBe(200);
    expect(await nursery.as('grower').people.readCalendarAddress()).toEqual({ openedAt: '2027-11-20T17:00:00.000Z' });
    await nursery.as('grower').people.revokeCalendarAddress(sent({}));
    await nursery.as('grower').people.revokeCalendarAddress(sent({}));
    expect(await nursery.as('grower').people.readCalendarAddress()).toEqual({ openedAt: null });
    expect((await ask(second)).statusCode).toBe(404);
    expect((await ask(other)).statusCode).toBe(200);
    for (const url of [
      `/calendar/${'A'.repeat(43)}.ics`,
      '/calendar/x.ics',
      '/calendar/',
      `/calendar/${randomUUID()}`,
      `${other}.ics`,
      other.replace('.ics', ''),
    ]) {
      expect({ url, statusCode: (await ask(url)).statusCode }).toEqual({ url, statusCode: 404 });
    }
  });

  it('is no session, and a session is no calendar', async () => {
    const path = await address();
    const secret = path.slice('/calendar/'.length, -'.ics'.length);
    expect((await ask('/trpc/people.me', { cookie: `rootclock_session=${secret}` })).statusCode).toBe(401);
  });

  it('ends with the person’s time at the nursery, and with a new password that somebody else sets', async () => {
    const path = await address('grower');
    const { personId } = nursery.people.grower;
    await nursery
      .as('owner')
      .people.changePerson(sent({ personId, name: 'Gone', role: 'grower' as const, ended: true }));
    expect((await ask(path)).statusCode).toBe(404);
  });

  it('shows one nursery’s tasks and no other’s', async () => {
    await story.setDays(story.benchId, { cover: '12-01' });
    const theirs = await address();
    const before = nursery.nurseryId;
    await open();
    expect((await entries(await address())).length).toBe(0);
    expect((await entries(theirs)).map(({ uid }) => uid.split('@')[1])).toEqual([
      `${before}.rootclock`,
      `${before}.rootclock`,
    ]);
  });
});
