// One request may carry many calls: what is counted, and what is bounded, is calls.
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { createApp, type AppParts } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openLine } from '../../support/process/cut-line.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let cookie: string;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
});
afterEach(() => app.close());
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const open = async (parts: Partial<AppParts> = {}) => {
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now, ...parts });
  await app.ready();
};
const batch = (procedure: string, calls: number, remoteAddress = '192.0.2.1') =>
  app.inject({
    method: 'GET',
    url: `/trpc/${Array(calls).fill(procedure).join(',')}?batch=1&input=${encodeURIComponent('{}')}`,
    headers: { cookie },
    remoteAddress,
  });

describe('a batch', () => {
  test('of twenty calls is answered', async () => {
    await open();
    const answer = await batch('people.me', 20);
    expect([answer.statusCode, answer.body.match(/"result"/g)?.length]).toEqual([200, 20]);
  });

  test.each([21, 350])('of %i calls is refused whole', async (calls) => {
    await open();
    const answer = await batch('people.me', calls);
    expect([answer.statusCode, answer.body.includes('"result"')]).toEqual([400, false]);
  });

  test('is not smaller for writing its commas otherwise', async () => {
    await open({ callsAMinute: 10 });
    const url = `/trpc/${Array(11).fill('people.me').join('%2C')}?batch=1&input=${encodeURIComponent('{}')}`;
    expect((await app.inject({ method: 'GET', url, headers: { cookie } })).statusCode).toBe(429);
  });
});

describe('the limit of an address', () => {
  test('counts calls, and says when to come back', async () => {
    await open({ callsAMinute: 30 });
    expect([(await batch('people.me', 20)).statusCode, (await batch('people.me', 10)).statusCode]).toEqual([200, 200]);
    const answer = await batch('people.me', 1);
    const { data } = answer.json<{ data: { waitSeconds: number } }>();
    expect([answer.statusCode, answer.json()]).toEqual([
      429,
      {
        code: 'too-many-requests',
        message: 'too-many-requests',
        data: { waitSeconds: expect.any(Number) },
        requestId: expect.any(String),
      },
    ]);
    expect(data.waitSeconds).toBeGreaterThan(0);
    expect(data.waitSeconds).toBeLessThanOrEqual(60);
    expect(answer.headers['retry-after']).toBe(String(data.waitSeconds));
  });

  test('is asked before anything is hashed or looked up: it holds also where the database is gone', async () => {
    const line = await openLine(database.url);
    await open({ databaseUrl: line.url, callsAMinute: 30 });
    await batch('people.me', 20);
    await line.close();
    const refused = await Promise.all(Array.from({ length: 50 }, () => batch('people.me', 20)));
    expect(new Set(refused.map(({ statusCode }) => statusCode))).toEqual(new Set([429]));
  });

  test('is its own, and one for a whole network of version 6, which one machine has for itself', async () => {
    await open({ callsAMinute: 20 });
    expect((await batch('people.me', 20, '2001:db8:0:1::1')).statusCode).toBe(200);
    expect((await batch('people.me', 20, '2001:db8:0:1:ffff::2')).statusCode).toBe(429);
    expect((await batch('people.me', 20, '2001:db8:0:2::1')).statusCode).toBe(200);
    expect((await batch('people.me', 20, '192.0.2.7')).statusCode).toBe(200);
    expect((await batch('people.me', 20, '::ffff:192.0.2.7')).statusCode).toBe(429);
  });

  test('turns nobody away who watches over the server', async () => {
    await open({ callsAMinute: 1 });
    const asked = await Promise.all(Array.from({ length: 5 }, () => app.inject('/health')));
    expect(asked.map(({ statusCode }) => statusCode)).toEqual([200, 200, 200, 200, 200]);
  });
});

describe('heavy reads of one person', () => {
  const heavy = () =>
    app.inject({
      method: 'GET',
      url: `/trpc/planning.readPlan?input=${encodeURIComponent('{}')}`,
      headers: { cookie },
      remoteAddress: '192.0.2.1',
    });

  test('are worked at two at a time, some wait, and the rest are told to come back', async () => {
    await open();
    const answers = await Promise.all(Array.from({ length: 60 }, heavy));
    const statuses = answers.map(({ statusCode }) => statusCode);
    const refused = answers.filter(({ statusCode }) => statusCode === 503);
    expect({ done: statuses.filter((status) => status === 200).length, refused: refused.length }).toEqual({
      done: 20,
      refused: 40,
    });
    expect(refused[0]?.json().error.data).toMatchObject({
      code: 'too-much-at-once',
      class: 'retry',
      requestId: expect.any(String),
    });
  });
});
