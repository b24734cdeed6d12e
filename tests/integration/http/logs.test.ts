// What is written down, at the lowest level there is and with everything failing: never what opens a door.
import type { AddressInfo } from 'node:net';
import { connect } from 'node:net';
import { once } from 'node:events';
import { Writable } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { exchange } from '../../support/process/raw-exchange.ts';
import { openLine } from '../../support/process/cut-line.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let written: string[];
let token: string;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  token = await sessionOf(nursery, 'owner');
});
afterEach(() => app.close());
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

async function open(level: string, databaseUrl = database.url) {
  written = [];
  const stream = new Writable({ write: (piece: Buffer, _, done) => (written.push(String(piece)), done()) });
  app = await createApp({ databaseUrl, clock: nursery.clock.now, log: { level, stream } });
  app.get('/broken/*', (request) => {
    request.log.warn({ req: request, headers: request.headers, url: request.url }, `asked for ${request.url}`);
    throw new Error(`broken at ${request.url} for ${request.headers.cookie}`);
  });
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  return { address, port: (app.server.address() as AddressInfo).port };
}

/** Asks, and leaves before the answer ends: that of the stream of changes never does. */
const look = async (url: string, headers: Record<string, string>) => (await fetch(url, { headers })).body?.cancel();

describe.each(['trace', 'info', 'warn', 'error'])('a log at the level %s', (level) => {
  test('never holds the secret of a calendar, nor a session', async () => {
    const { path } = await nursery.as('owner').people.createCalendarAddress(sent({}));
    const secret = path.slice('/calendar/'.length, -'.ics'.length);
    const line = await openLine(database.url);
    const { address, port } = await open(level, line.url);
    const headers = {
      cookie: `a=1; rootclock_session=${token}; __Host-rootclock_session=${token}x`,
      referer: `${address}${path}`,
    };
    const urls = [
      path,
      `${path}?language=es`,
      `${path}/more`,
      `/calendar/%${secret.charCodeAt(0).toString(16)}${secret.slice(1)}.ics`,
      `/broken${path}`,
      '/trpc/people.me',
      `/trpc/people.me?input=${secret}`,
      `/live?of=${secret}`,
    ];
    for (const url of urls) await look(`${address}${url}`, headers);
    await exchange(
      port,
      `GET ${path} HTTP/1.1\r\nHost: \r\nCookie: rootclock_session=${token}\r\nConnection: close\r\n\r\n`,
    );
    await exchange(
      port,
      `GET ${path} HTTP/1.1\r\nHost: a\r\nCookie: rootclock_session=${token}\r\nContent-Length: x\r\n\r\n`,
    );
    // From here on every look-up fails, with the secret's hash among its parameters.
    await line.close();
    for (const url of [path, '/trpc/people.me', '/live']) await look(`${address}${url}`, headers);
    const log = written.join('');
    expect(log).toContain('broken at');
    for (const hidden of [secret, secret.slice(1), token]) expect(log).not.toContain(hidden);
  });
});

test('a log says which request failed', async () => {
  const { address } = await open('warn');
  const { requestId } = (await (await fetch(`${address}/broken/of-course`)).json()) as { requestId: string };
  const failures = written
    .map(
      (line) =>
        JSON.parse(line) as {
          level: number;
          requestId?: string;
          err?: { message: string };
          req?: { url: string; method: string };
        },
    )
    .filter(({ err }) => err);
  expect(failures).toEqual([
    expect.objectContaining({
      level: 50,
      requestId,
      err: expect.objectContaining({ message: expect.stringMatching(/^broken at/) }),
      req: expect.objectContaining({ method: 'GET', url: '/broken/of-course' }),
    }),
  ]);
});

test('a log of warnings is not filled by those who watch over the server, hang up, or ask for what is not there', async () => {
  const { address, port } = await open('info');
  for (let i = 0; i < 20; i += 1) await (await fetch(`${address}/health`)).arrayBuffer();
  for (let i = 0; i < 5; i += 1) await (await fetch(`${address}/ready`)).arrayBuffer();
  for (let i = 0; i < 10; i += 1) await (await fetch(`${address}/nothing-${i}`)).arrayBuffer();
  const hangUp = async (start: string) => {
    const socket = connect(port, '127.0.0.1');
    await once(socket, 'connect');
    socket.write(start);
    socket.resetAndDestroy();
    await once(socket, 'close');
  };
  const head = `HTTP/1.1\r\nHost: a\r\nCookie: rootclock_session=${token}\r\n`;
  for (const start of [
    '',
    'GET ',
    `GET /live ${head}\r\n`,
    `POST /trpc/people.signIn ${head}Content-Type: application/json\r\nContent-Length: 100\r\n\r\n{`,
  ]) {
    for (let i = 0; i < 5; i += 1) await hangUp(start);
  }
  await (await fetch(`${address}/health`)).arrayBuffer();
  const warnings = written.map((line) => JSON.parse(line) as { level: number; msg: string; req?: { url?: string } });
  expect(warnings.filter(({ level }) => level >= 40)).toEqual([]);
  expect(warnings.filter(({ req }) => req?.url?.startsWith('/health') || req?.url?.startsWith('/ready'))).toEqual([]);
});
