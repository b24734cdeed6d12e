// Requests that no browser makes: each is answered as JSON with a request id, and none is believed.
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { exchange } from '../../support/process/raw-exchange.ts';

let database: TestDatabase;
let app: Awaited<ReturnType<typeof createApp>>;
let port: number;
beforeAll(async () => {
  database = await createDatabase();
  app = await createApp({ databaseUrl: database.url });
  await app.listen({ host: '127.0.0.1', port: 0 });
  port = (app.server.address() as AddressInfo).port;
});
afterAll(async () => {
  await app.close();
  await database.drop();
});

const send = (line: string, headers: string[], body = '') =>
  exchange(port, `${[line, ...headers, 'Connection: close'].join('\r\n')}\r\n\r\n${body}`);
const refused = (status: number, code = 'invalid-input') => ({
  status,
  json: { code, message: code, data: expect.anything(), requestId: expect.stringMatching(/^[\w-]{36}$/) },
});
const host = 'Host: 127.0.0.1';

describe('a host that is none', () => {
  const odd: [string, string[]][] = [
    ['is missing', []],
    ['is empty', ['Host: ']],
    ['is given twice', [host, 'Host: elsewhere.example']],
    ['has a space', ['Host: here and there']],
    ['has a path', ['Host: 127.0.0.1/people']],
    ['has a person', ['Host: owner@127.0.0.1']],
    ['has two names', ['Host: 127.0.0.1, elsewhere.example']],
    ['has a port that is none', ['Host: 127.0.0.1:port']],
    ['is absurdly long', [`Host: ${'a'.repeat(5000)}`]],
  ];
  test.each(odd)('is refused when it %s', async (_, headers) => {
    expect(await send('GET /health HTTP/1.1', headers)).toMatchObject(refused(400));
  });

  test.each(['127.0.0.1', 'nursery.example:8443', '[::1]:4310', 'LOCALHOST', 'my_server.lan'])(
    'is not suspected in %s',
    async (name) => {
      expect((await send('GET /health HTTP/1.1', [`Host: ${name}`])).json).toEqual({ live: true });
    },
  );

  test('is not asked of those who watch over the server in the oldest way', async () => {
    expect((await send('GET /health HTTP/1.0', [])).json).toEqual({ live: true });
  });
});

describe('a method that is none here', () => {
  test.each(['TRACE', 'CONNECT'])('%s is refused', async (method) => {
    expect(await send(`${method} /trpc/people.me HTTP/1.1`, [host])).toMatchObject(refused(400));
  });

  test.each(['OPTIONS', 'PUT', 'DELETE', 'PATCH', 'PROPFIND'])('%s is told what is served', async (method) => {
    const answer = await send(`${method} /trpc/people.me HTTP/1.1`, [host]);
    expect(answer).toMatchObject({ ...refused(405), headers: { allow: 'GET, HEAD, POST' } });
  });

  test('NONSENSE is refused before it is one', async () => {
    expect(await send('NONSENSE / HTTP/1.1', [host])).toMatchObject(refused(400));
  });
});

describe('what cannot be read', () => {
  test('as a request', async () => {
    expect(await exchange(port, 'nothing of the kind\r\n\r\n')).toMatchObject(refused(400));
  });

  test('as an address', async () => {
    expect(await send('GET /%ff HTTP/1.1', [host])).toMatchObject(refused(400));
  });

  test('for the length of its headers', async () => {
    expect(await send('GET /health HTTP/1.1', [host, `X-Long: ${'a'.repeat(40_000)}`])).toMatchObject(refused(431));
  });

  test('as the length that it says', async () => {
    expect(
      await send('POST /trpc/people.me HTTP/1.1', [host, 'Content-Type: application/json', 'Content-Length: two']),
    ).toMatchObject(refused(400));
  });

  test('as a type of content', async () => {
    expect(
      await send('POST /trpc/people.signIn HTTP/1.1', [host, 'Content-Type: text/plain', 'Content-Length: 2'], '{}'),
    ).toMatchObject(refused(415));
  });
});
