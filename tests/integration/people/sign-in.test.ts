import { referencePlants } from '@rootclock/server/reference/index';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { sent, testClock } from '../../support/nursery.ts';

let database: TestDatabase;
let app: Awaited<ReturnType<typeof createApp>>;
const clock = testClock('2026-05-20');

const owner = {
  nurseryName: 'Proving Ground',
  zone: 'America/Chicago',
  name: 'Test Owner',
  email: 'owner@example.test',
  password: 'long enough to hold',
};

beforeAll(async () => {
  database = await createDatabase();
  app = await createApp({ databaseUrl: database.url, clock: clock.now });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await database.drop();
});

const post = (procedure: string, body: object, headers: Record<string, string> = {}, remoteAddress = '127.0.0.1') =>
  app.inject({
    method: 'POST',
    url: `/trpc/${procedure}`,
    payload: sent(body),
    headers: { 'content-type': 'application/json', ...headers },
    remoteAddress,
  });
const get = (procedure: string, cookie = '', input?: object) =>
  app.inject({
    method: 'GET',
    url: `/trpc/${procedure}${input ? `?input=${encodeURIComponent(JSON.stringify(input))}` : ''}`,
    headers: { cookie },
  });
const cookieOf = (response: { cookies: { name: string; value: string }[] }) =>
  response.cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
const codeOf = (response: { json(): { error?: { data: { code: string } } } }) => response.json().error?.data.code;

describe('the first visit to an empty server', () => {
  test('makes the first owner, once', async () => {
    expect((await get('people.setupState')).json().result.data).toEqual({
      needsFirstOwner: true,
      demo: false,
      demoSignIns: [],
    });
    const made = await post('people.createFirstOwner', owner);
    expect(made.statusCode).toBe(200);
    expect((await get('people.me', cookieOf(made))).json().result.data).toMatchObject({
      role: 'owner',
      nursery: { name: 'Proving Ground' },
    });
    const protocols = (await get('propagation.listProtocols', cookieOf(made), { have: 'with' })).json().result.data;
    expect({ plants: protocols.total, missing: protocols.missingReference }).toEqual({
      plants: referencePlants.length,
      missing: 0,
    });
    expect(codeOf(await post('people.createFirstOwner', { ...owner, email: 'second@example.test' }))).toBe(
      'nursery-exists',
    );
  });
});

describe('signing in', () => {
  test('answers a cookie that scripts and other sites cannot use', async () => {
    const response = await post('people.signIn', { email: 'OWNER@example.test', password: owner.password });
    expect(response.cookies).toContainEqual(
      expect.objectContaining({ name: 'rootclock_session', httpOnly: true, sameSite: 'Lax', path: '/' }),
    );
  });

  test('stores only a hash of the token', async () => {
    const response = await post('people.signIn', { email: owner.email, password: owner.password });
    expect(response.cookies[0]!.value).toHaveLength(43);
    expect(response.body).not.toContain(response.cookies[0]!.value);
  });

  test.each([
    ['a wrong password', owner.email],
    ['an unknown address', 'nobody@example.test'],
  ])('with %s gets the same answer', async (_, email) => {
    const response = await post('people.signIn', { email, password: 'certainly not this' });
    expect([response.statusCode, codeOf(response)]).toEqual([401, 'wrong-sign-in']);
  });

  test('is limited after five failures, and works again after the pause it tells', async () => {
    clock.set('2026-05-23');
    const guess = () => post('people.signIn', { email: owner.email, password: 'guessing wildly' }, {}, '127.0.0.9');
    for (let i = 0; i < 5; i++) expect(codeOf(await guess())).toBe('wrong-sign-in');
    const right = () => post('people.signIn', { email: owner.email, password: owner.password }, {}, '127.0.0.9');
    const refused = await right();
    expect([refused.statusCode, refused.json().error.data]).toMatchObject([
      429,
      { code: 'too-many-sign-ins', data: { waitSeconds: 1 } },
    ]);
    clock.set('2026-05-23T17:00:01Z');
    expect((await right()).statusCode).toBe(200);
  });

  test('ends with signing out, also for a copied cookie', async () => {
    const cookie = cookieOf(await post('people.signIn', { email: owner.email, password: owner.password }));
    expect((await get('people.me', cookie)).statusCode).toBe(200);
    await post('people.signOut', {}, { cookie });
    expect(codeOf(await get('people.me', cookie))).toBe('not-signed-in');
  });

  test('lapses after thirty days', async () => {
    const cookie = cookieOf(await post('people.signIn', { email: owner.email, password: owner.password }));
    clock.set('2026-06-23');
    expect(codeOf(await get('people.me', cookie))).toBe('not-signed-in');
  });
});

describe('a write forged by another site', () => {
  test.each([
    ['says its fetch is cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['says its fetch is from a neighbouring site', { 'sec-fetch-site': 'same-site' }],
    ['names another origin', { origin: 'https://elsewhere.example' }],
    ['hides its origin', { origin: 'null' }],
  ])('is refused when it %s', async (_, headers) => {
    expect([
      (await post('people.signIn', { email: owner.email, password: owner.password }, headers)).statusCode,
    ]).toEqual([403]);
  });

  test('is refused when it is sent as a form', async () => {
    const response = await app.inject({
      method: 'POST',
      url: '/trpc/people.signOut',
      payload: 'a=b',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
    });
    expect(response.statusCode).toBeGreaterThanOrEqual(400);
  });
});

describe('the interfaces around it', () => {
  test('say that the server lives and is ready', async () => {
    expect((await app.inject('/health')).json()).toEqual({ live: true });
    expect((await app.inject('/ready')).json()).toEqual({ ready: true });
  });
  test.each(['/trpc/stock.loseFromLot', '/trpc/nothing.atAll', '/trpc/people.signIn'])(
    'answer rubbish at %s without a fault',
    async (url) => {
      for (const payload of [
        '{',
        '[]',
        '"x"',
        '{"commandId":1}',
        '{"commandId":"00000000-0000-4000-8000-000000000000","body":{"lotId":"\\u0000"}}',
      ]) {
        const response = await app.inject({
          method: 'POST',
          url,
          payload,
          headers: { 'content-type': 'application/json' },
        });
        expect(response.statusCode).toBeLessThan(500);
      }
    },
  );
});
