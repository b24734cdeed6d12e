// The server behind a proxy that speaks https with the world and http with us, names itself as the host, and says in headers what it was asked.
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { request } from 'node:https';
import type { IncomingHttpHeaders, IncomingMessage, Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createProxyServer } from 'http-proxy-3';
import { generate } from 'selfsigned';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { createApp, type AppParts } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

const PUBLIC = 'https://nursery.example';

let database: TestDatabase;
let nursery: TestNursery;
let certificate: { private: string; cert: string };
let app: Awaited<ReturnType<typeof createApp>>;
const closing: (() => Promise<unknown>)[] = [];
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  certificate = await generate([{ name: 'commonName', value: 'nursery.example' }]);
});
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

interface Asked {
  method?: string;
  headers?: IncomingHttpHeaders;
  body?: object;
  /** The address on this machine that it is asked from. */
  from?: string;
}

/** A server and the proxy before it; answers how the proxy is asked. */
async function openBehind(parts: Partial<AppParts>) {
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now, ...parts });
  const target = await app.listen({ host: '127.0.0.1', port: 0 });
  closing.push(() => app.close());
  const proxy = createProxyServer({
    target,
    changeOrigin: true,
    xfwd: true,
    ssl: { key: certificate.private, cert: certificate.cert },
  });
  proxy.listen(0, '127.0.0.1');
  const listener = (proxy as unknown as { _server: Server })._server;
  await once(listener, 'listening');
  closing.push(() => new Promise((resolve) => proxy.close(() => resolve(undefined))));
  const { port } = listener.address() as AddressInfo;
  const start = async (path: string, { method = 'GET', headers = {}, body, from = '127.0.0.1' }: Asked) => {
    const asking = request({
      host: '127.0.0.1',
      port,
      path,
      method,
      localAddress: from,
      agent: false,
      rejectUnauthorized: false,
      headers: { host: 'nursery.example', ...(body && { 'content-type': 'application/json' }), ...headers },
    });
    asking.end(body && JSON.stringify(body));
    const [answer] = (await once(asking, 'response')) as [IncomingMessage];
    return answer;
  };
  const ask = async (path: string, asked: Asked = {}) => {
    const answer = await start(path, asked);
    let text = '';
    for await (const piece of answer.setEncoding('utf8')) text += piece as string;
    return { status: answer.statusCode, headers: answer.headers, json: JSON.parse(text) as Record<string, unknown> };
  };
  return { ask, start };
}

const signOut = (headers: IncomingHttpHeaders = {}) => ({ method: 'POST', body: sent({}), headers });

describe('who is told its public address', () => {
  const behind = { publicUrl: new URL(PUBLIC), trustedProxies: ['127.0.0.1'] };

  test('takes writes from the pages at that address, though its host is another one', async () => {
    const { ask } = await openBehind(behind);
    expect(
      (await ask('/trpc/people.signOut', signOut({ origin: PUBLIC, 'sec-fetch-site': 'same-origin' }))).status,
    ).toBe(200);
  });

  test.each(['https://elsewhere.example', 'http://nursery.example', 'https://nursery.example:8443', 'null'])(
    'takes none from pages at %s',
    async (origin) => {
      const { ask } = await openBehind(behind);
      expect((await ask('/trpc/people.signOut', signOut({ origin }))).status).toBe(403);
    },
  );

  test('sets cookies for https alone, and has browsers stay with https', async () => {
    const person = { email: 'new@example.test', password: 'winter wheat 1987 lantern' };
    await nursery
      .as('owner')
      .people.addPerson(sent({ personId: randomUUID(), name: 'Somebody new', role: 'viewer', ...person }));
    const { ask } = await openBehind(behind);
    const signedIn = await ask('/trpc/people.signIn', {
      method: 'POST',
      body: sent(person),
      headers: { origin: PUBLIC },
    });
    expect([signedIn.status, signedIn.headers['set-cookie']]).toEqual([
      200,
      [
        expect.stringMatching(/^__Host-rootclock_session=.*; Secure/),
        expect.stringMatching(/^__Host-rootclock_device=.*; Secure/),
      ],
    ]);
    expect(signedIn.headers['strict-transport-security']).toMatch(/^max-age=\d+/);
  });

  test('makes calendar addresses with it', async () => {
    const { ask } = await openBehind(behind);
    const cookie = `__Host-rootclock_session=${await sessionOf(nursery, 'owner')}`;
    const { json } = await ask('/trpc/people.createCalendarAddress', {
      method: 'POST',
      body: sent({}),
      headers: { origin: PUBLIC, cookie },
    });
    expect(json).toMatchObject({ result: { data: { origin: PUBLIC, path: expect.stringMatching(/^\/calendar\//) } } });
  });

  test('passes the stream of changes on at once', async () => {
    const { start } = await openBehind(behind);
    const answer = await start('/trpc/live.hearChanges', {
      headers: { cookie: `__Host-rootclock_session=${await sessionOf(nursery, 'owner')}` },
    });
    const [first] = (await once(answer.setEncoding('utf8'), 'data')) as [string];
    answer.destroy();
    expect({
      type: answer.headers['content-type'],
      buffering: answer.headers['x-accel-buffering'],
      encoding: answer.headers['content-encoding'],
      first,
    }).toEqual({
      type: 'text/event-stream',
      buffering: 'no',
      encoding: undefined,
      first: expect.stringContaining('event: connected'),
    });
  });
});

describe('who trusts its proxy', () => {
  const asMany = async (
    ask: Awaited<ReturnType<typeof openBehind>>['ask'],
    from: string,
    headers: IncomingHttpHeaders = {},
  ) =>
    (await Promise.all(Array.from({ length: 3 }, () => ask('/trpc/people.me', { from, headers })))).map(
      ({ status }) => status,
    );

  test('counts each address behind it by itself', async () => {
    const { ask } = await openBehind({ trustedProxies: ['127.0.0.1'], callsAMinute: 3 });
    expect(await asMany(ask, '127.0.0.2')).toEqual([401, 401, 401]);
    expect(await asMany(ask, '127.0.0.2')).toEqual([429, 429, 429]);
    expect(await asMany(ask, '127.0.0.3')).toEqual([401, 401, 401]);
  });

  test('is told no other address by who stands before the proxy', async () => {
    const { ask } = await openBehind({ trustedProxies: ['127.0.0.1'], callsAMinute: 3 });
    await asMany(ask, '127.0.0.2');
    expect(await asMany(ask, '127.0.0.2', { 'x-forwarded-for': '198.51.100.7' })).toEqual([429, 429, 429]);
  });

  test('believes the host that the proxy was asked for, where no public address is set', async () => {
    const { ask } = await openBehind({ trustedProxies: ['127.0.0.0/8'] });
    expect((await ask('/trpc/people.signOut', signOut({ origin: PUBLIC }))).status).toBe(200);
    expect((await ask('/trpc/people.signOut', signOut({ origin: 'https://elsewhere.example' }))).status).toBe(403);
  });
});

describe('who trusts nobody', () => {
  test.each([[], ['192.0.2.0/24']])('believes no forwarded header (%s)', async (...trustedProxies) => {
    const { ask } = await openBehind({ trustedProxies: trustedProxies.flat(), callsAMinute: 3 });
    expect((await ask('/trpc/people.signOut', signOut({ origin: PUBLIC }))).status).toBe(403);
    await ask('/trpc/people.me', { from: '127.0.0.2' });
    await ask('/trpc/people.me', { from: '127.0.0.3' });
    expect(
      (await ask('/trpc/people.me', { from: '127.0.0.4', headers: { 'x-forwarded-for': '198.51.100.7' } })).status,
    ).toBe(429);
  });

  test('believes none that is sent to it directly', async () => {
    await openBehind({ publicUrl: new URL('http://127.0.0.1'), trustedProxies: ['192.0.2.1'], callsAMinute: 3 });
    const forwarded = {
      'x-forwarded-for': '198.51.100.7',
      'x-forwarded-host': 'nursery.example',
      'x-forwarded-proto': 'https',
      forwarded: 'for=198.51.100.7;host=nursery.example;proto=https',
    };
    const direct = (origin: string, headers: object) =>
      app.inject({
        method: 'POST',
        url: '/trpc/people.signOut',
        payload: sent({}),
        headers: { 'content-type': 'application/json', origin, ...headers },
      });
    const answers = [
      await direct(PUBLIC, forwarded),
      await direct('http://127.0.0.1', forwarded),
      await direct('http://127.0.0.1', {}),
      await direct('http://127.0.0.1', { 'x-forwarded-for': '198.51.100.8' }),
    ];
    expect(answers.map(({ statusCode }) => statusCode)).toEqual([403, 200, 200, 429]);
    expect(answers[0]?.headers['strict-transport-security']).toBeUndefined();
  });
});
