// What is kept by a browser, or by a proxy between, and what by nobody.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let cookie: string;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now });
  await app.ready();
  cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
});

const keeping = async (url: string, headers: Record<string, string> = { cookie }) =>
  (await app.inject({ method: 'GET', url, headers })).headers['cache-control'];

describe('nothing keeps', () => {
  test.each([
    ['a read', '/trpc/people.me'],
    ['a batch of reads', `/trpc/people.me,stock.listLots?batch=1&input=${encodeURIComponent('{"1":{}}')}`],
    ['a refused read', '/trpc/people.nobody'],
    ['a page that is not there', `/paper/protocols/${randomUUID()}.pdf`],
    ['an address that is not there', '/nowhere'],
    ['how the server is', '/ready'],
  ])('%s', async (_, url) => {
    expect(await keeping(url)).toBe('no-store');
  });

  test('the answer of a command', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/trpc/people.signOut',
      payload: sent({}),
      headers: { 'content-type': 'application/json' },
    });
    expect([answer.statusCode, answer.headers['cache-control']]).toEqual([200, 'no-store']);
  });

  test('a printed page', async () => {
    await nursery.as('owner').plants.loadReference(sent({}));
    await nursery.as('owner').propagation.loadReferenceProtocols(sent({}));
    const [{ id } = { id: '' }] = await nursery.sql<{ id: string }>(
      'SELECT id FROM protocol_version WHERE nursery_id = $1 LIMIT 1',
      [nursery.nurseryId],
    );
    const answer = await app.inject({ method: 'GET', url: `/paper/protocols/${id}.pdf`, headers: { cookie } });
    expect([answer.statusCode, answer.headers['cache-control']]).toEqual([200, 'no-store']);
  });
});

test('a calendar is kept by the phone that subscribed to it, and asked for anew after a quarter of an hour', async () => {
  const { path } = await nursery.as('owner').people.createCalendarAddress(sent({}));
  expect(await keeping(path, {})).toBe('private, max-age=900');
});
