// How much, how deep and how slowly may be sent.
import type { AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { exchange } from '../../support/process/raw-exchange.ts';
import { sent } from '../../support/nursery.ts';

let database: TestDatabase;
let app: Awaited<ReturnType<typeof createApp>>;
beforeAll(async () => {
  database = await createDatabase();
  app = await createApp({ databaseUrl: database.url });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await database.drop();
});

const post = (payload: string, url = '/trpc/people.signIn') =>
  app.inject({ method: 'POST', url, payload, headers: { 'content-type': 'application/json' } });
const signIn = (password: string) => JSON.stringify(sent({ email: 'nobody@example.test', password }));
const ofBytes = (bytes: number) => signIn('a'.repeat(bytes - Buffer.byteLength(signIn(''))));
const nested = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;
const wrongForm = {
  code: 'invalid-input',
  message: 'invalid-input',
  data: { issues: [{ path: '', problem: 'wrong-form' }] },
  requestId: expect.any(String),
};

describe('a body', () => {
  test('is read up to 256 kB', async () => {
    expect((await post(ofBytes(256 * 1024))).json().error.data.code).toBe('invalid-input');
  });

  test('of more is refused, and the most is said', async () => {
    const answer = await post(ofBytes(256 * 1024 + 1));
    expect([answer.statusCode, answer.json()]).toEqual([
      413,
      {
        code: 'body-too-large',
        message: 'body-too-large',
        data: { mostKilobytes: 256 },
        requestId: expect.any(String),
      },
    ]);
  });

  test('of 32 levels is read', async () => {
    expect((await post(nested(32))).json().error.data.code).toBe('invalid-input');
  });

  test.each([33, 100_000])('of %i levels is refused before it is parsed', async (levels) => {
    const answer = await post(nested(levels));
    expect([answer.statusCode, answer.json()]).toEqual([400, wrongForm]);
  });

  test('is not deep for brackets that stand in its texts', async () => {
    const text = JSON.stringify(sent({ email: 'nobody@example.test', password: `"\\"${'[{'.repeat(90)}` }));
    expect((await post(text)).json().error.data.code).toBe('wrong-sign-in');
  });

  test('is not deep for standing in the address either', async () => {
    const answer = await app.inject({ method: 'GET', url: `/trpc/people.me?input=${encodeURIComponent(nested(33))}` });
    expect([answer.statusCode, answer.json()]).toEqual([400, wrongForm]);
  });
});

describe('who sends too slowly', () => {
  // What the server waits for is cut down here, so that nobody waits for thirty seconds.
  const patienceMs = 400;
  let impatient: Awaited<ReturnType<typeof createApp>>;
  let port: number;
  beforeAll(async () => {
    impatient = await createApp({ databaseUrl: database.url, patienceMs });
    await impatient.listen({ host: '127.0.0.1', port: 0 });
    port = (impatient.server.address() as AddressInfo).port;
  });
  afterAll(() => impatient.close());

  const drip = () => pause(patienceMs / 8);
  const start = ['POST /trpc/people.signIn HTTP/1.1\r\n', 'Host: 127.0.0.1\r\n', 'Content-Type: application/json\r\n'];
  const timedOut = {
    status: 408,
    json: { code: 'invalid-input', message: 'invalid-input', requestId: expect.any(String) },
  };

  test('headers is cut', async () => {
    expect(
      await exchange(port, [...start, ...Array.from({ length: 40 }, (_, at) => `X-${at}: a\r\n`)], drip),
    ).toMatchObject(timedOut);
  });

  test('a body is cut', async () => {
    expect(
      await exchange(port, [...start, 'Content-Length: 1000\r\n\r\n', ...Array.from({ length: 40 }, () => 'a')], drip),
    ).toMatchObject(timedOut);
  });

  test('a body is cut whose headers came at once', async () => {
    const head = `${start.join('')}Content-Length: 1000\r\n\r\n`;
    expect(await exchange(port, [head, ...Array.from({ length: 40 }, () => 'a')], drip)).toMatchObject(timedOut);
  });

  test('is cut within thirty seconds where nobody set another patience', () => {
    const { requestTimeout, headersTimeout, maxConnections } = app.server;
    // Node looks at its lines now and then only; the rest is for that. Bodies that are no files are cut by our own patience.
    expect(headersTimeout).toBeLessThanOrEqual(27_000);
    expect(requestTimeout).toBeLessThanOrEqual(6 * 27_000);
    expect(requestTimeout).toBeGreaterThan(0);
    expect(headersTimeout).toBeLessThanOrEqual(requestTimeout);
    expect(maxConnections).toBeGreaterThan(0);
  });
});
