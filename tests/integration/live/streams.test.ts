// A stream ends with the session it was opened by, a person has few of them, and one that is not read costs nothing.
import { createHash } from 'node:crypto';
import type { Socket } from 'node:net';
import type { Role } from '@rootclock/domain';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { Streams } from '../../../apps/server/src/live/streams.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { openLine } from '../../support/process/cut-line.ts';
import { hear } from '../../support/process/hearing.ts';
import { cookieOf, sessionOf } from '../../support/session.ts';

/** Longer than any of these tests, so that nothing in them happens because a beat came. */
const NEVER_MS = 3_600_000;
const BEAT_MS = 200;

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let address: string;

beforeEach(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
});
afterEach(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
});

async function serve(beatMs: number, databaseUrl = database.url): Promise<void> {
  app = await createApp({ databaseUrl, clock: nursery.clock.now, beatMs });
  address = await app.listen({ host: '127.0.0.1', port: 0 });
}

const hearAs = async (role: Role) => hear(address, await cookieOf(nursery, role));
const changed = (role: Role, change: object) => {
  const { personId, personName: name } = nursery.people[role];
  return nursery.as('owner').people.changePerson(sent({ personId, name, role, ended: false, ...change }));
};

describe('a stream', () => {
  test('is not opened for a stranger, who is told why', async () => {
    await serve(NEVER_MS);
    expect(await (await hear(address, '')).ended).toBe('not-signed-in');
  });

  test('tells a page of earlier versions that asks for the old one to ask no more', async () => {
    await serve(NEVER_MS);
    expect((await app.inject('/live')).statusCode).toBe(204);
  });

  test('begins with how far the nursery is, also after a restart of the server', async () => {
    await nursery.sql('UPDATE nursery SET version = 41 WHERE id = $1', [nursery.nurseryId]);
    await serve(NEVER_MS);
    const heard = await hearAs('viewer');
    expect(heard.words).toEqual([{ version: 41 }]);
    heard.close();
  });

  test('beats', async () => {
    await serve(BEAT_MS);
    const heard = await hearAs('viewer');
    await expect.poll(() => heard.words.length).toBeGreaterThanOrEqual(3);
    heard.close();
  });

  test.each([
    ['a person is removed', () => changed('crew', { ended: true })],
    ['a person gets another password', () => changed('crew', { password: 'chosen by the owner' })],
  ])('ends at once when %s, and nobody else’s does', async (_, change) => {
    await serve(NEVER_MS);
    const [theirs, others] = await Promise.all([hearAs('crew'), hearAs('viewer')]);
    await change();
    expect(await theirs.ended).toBe('not-signed-in');
    await expect.poll(() => others.words.length).toBeGreaterThan(1);
    expect(await Promise.race([others.ended, 'open'])).toBe('open');
    others.close();
  });

  test('ends at once when its session is signed out, and another one of the same person does not', async () => {
    await serve(NEVER_MS);
    const token = await sessionOf(nursery, 'crew');
    const [ending, staying] = [await hear(address, `rootclock_session=${token}`), await hearAs('crew')];
    const payload = sent({});
    const cookie = `rootclock_session=${token}`;
    const out = await app.inject({
      method: 'POST',
      url: '/trpc/people.signOut',
      payload,
      headers: { cookie, 'content-type': 'application/json' },
    });
    expect(out.statusCode).toBe(200);
    expect(await ending.ended).toBe('not-signed-in');
    expect(await Promise.race([staying.ended, 'open'])).toBe('open');
    staying.close();
  });

  test('ends at once when another process ends its session, by deleting it too', async () => {
    await serve(NEVER_MS);
    const token = await sessionOf(nursery, 'crew');
    const heard = await hear(address, `rootclock_session=${token}`);
    await nursery.sql('DELETE FROM token WHERE hash = $1', [createHash('sha256').update(token).digest()]);
    expect(await heard.ended).toBe('not-signed-in');
  });

  test('ends with the next beat when its session has run out', async () => {
    await serve(BEAT_MS);
    const heard = await hear(address, await cookieOf(nursery, 'crew', 2));
    nursery.clock.set('2026-05-23');
    expect(await heard.ended).toBe('not-signed-in');
  });

  test('goes on while the database is away, which says nothing about its session', async () => {
    const line = await openLine(database.url);
    await serve(BEAT_MS, line.url);
    const heard = await hearAs('crew');
    line.behave('refuses');
    const before = heard.words.length;
    await expect.poll(() => heard.words.length).toBeGreaterThan(before + 3);
    line.behave('passes');
    heard.close();
    await line.close();
  });

  test('is one of at most ten of a person: the oldest ends, and none of anybody else', async () => {
    await serve(NEVER_MS);
    const other = await hearAs('viewer');
    const cookie = await cookieOf(nursery, 'crew');
    const all: Awaited<ReturnType<typeof hear>>[] = [];
    for (let opened = 0; opened < 12; opened++) all.push(await hear(address, cookie));
    expect(await Promise.all(all.slice(0, 2).map(({ ended }) => ended))).toEqual([null, null]);
    await nursery
      .as('grower')
      .stock.addPlace(sent({ placeId: '00000000-0000-4000-8000-0000000000b1', code: 'B1', kind: 'bench' as const }));
    await expect.poll(() => [...all.slice(2), other].filter(({ words }) => words.length < 2)).toEqual([]);
    for (const { close } of [...all, other]) close();
  });
});

describe('a page that does not take what it is told', () => {
  /** So often that no system's own buffers hold it all. */
  const ROUNDS = 30;

  /** Changes as the runner tells them, as many as a busy day has in a year. */
  async function flood(times: number): Promise<void> {
    const features = Array.from({ length: 40 }, (_, index) => `feature-with-a-long-name-${index}`);
    await nursery.sql(
      `SELECT pg_notify('rootclock', json_build_object('nursery', $1::text, 'version', v, 'features', $2::text[])::text) FROM generate_series(1, $3) v`,
      [nursery.nurseryId, features, times],
    );
  }

  test('fills no memory of the server, and hears the newest when it reads again', async () => {
    await serve(NEVER_MS);
    const sockets = new Set<Socket>();
    app.server.on('connection', (socket: Socket) => void sockets.add(socket));
    const [lazy, keen] = [await hearAs('crew'), await hearAs('viewer')];
    lazy.pause();
    for (let round = 0; round < ROUNDS; round++) await flood(1_000);
    await nursery.sql(`SELECT pg_notify('rootclock', $1)`, [
      JSON.stringify({ nursery: nursery.nurseryId, version: 2_000, features: [] }),
    ]);
    await expect.poll(() => keen.words.at(-1)?.version, { timeout: 60_000 }).toBe(2_000);
    expect(Math.max(...[...sockets].map(({ writableLength }) => writableLength))).toBeLessThan(200_000);
    lazy.resume();
    await expect.poll(() => lazy.words.at(-1)?.version).toBe(2_000);
    lazy.close();
    keen.close();
  });

  test('is hung up on after a few beats', async () => {
    await serve(NEVER_MS);
    const streams = new Streams();
    let hungUp = 0;
    const caller = nursery.people.crew;
    const page = { callerNow: async () => caller, hangUp: () => void (hungUp += 1) };
    const [taken, untaken] = [streams.hear(caller, page).words(), streams.hear(caller, page)];
    const heardUntilBeat: number[] = [];
    for (let beat = 1; beat <= 6; beat++) {
      await taken.next();
      streams.beat();
      heardUntilBeat.push(hungUp);
    }
    expect(heardUntilBeat).toEqual([0, 0, 1, 1, 1, 1]);
    expect((await untaken.words().next()).done).toBe(true);
    streams.stop();
  });
});
