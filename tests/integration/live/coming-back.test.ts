// A browser's line of changes against everything that may answer in the server's stead: it comes back, and hears the next entry.
import { randomUUID } from 'node:crypto';
import { createServer, request, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { EventSource as NodeEventSource } from 'eventsource';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { LiveLine, SILENT_MS } from '../../../apps/web/src/lib/live/line.ts';
import { subscribeAt } from '../../../apps/web/src/lib/live/subscribe.ts';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { cookieOf } from '../../support/session.ts';

/** The browser's clock runs so many times faster, and so does the server's beat. */
const FASTER = 20;
const BEAT_MS = 300;

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
/** Where the server answers, or did until it was stopped. */
let port: number;
let front: Server;
let address: string;
let cookie: string;

/** What stands between browser and server, and how often it was asked. */
type Between = (answer: ServerResponse) => void;
let between: Between | null;
let asked: number;
let carried: Set<ServerResponse>;
let isSilent: boolean;

async function serve(): Promise<void> {
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now, beatMs: BEAT_MS });
  await app.listen({ host: '127.0.0.1', port: 0 });
  ({ port } = app.server.address() as AddressInfo);
}

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  await serve();
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
});

beforeEach(async () => {
  cookie = await cookieOf(nursery, 'viewer');
  [between, asked, carried, isSilent] = [null, 0, new Set(), false];
  front = createServer((incoming, answer) => {
    asked += 1;
    if (between) return between(answer);
    carried.add(answer);
    const { headers, url = '/' } = incoming;
    const onward = request({ port, host: '127.0.0.1', path: url, headers }, (told) => {
      answer.writeHead(told.statusCode ?? 502, told.headers).flushHeaders();
      told.on('data', (bytes) => void (isSilent || answer.write(bytes)));
      told.on('close', () => void (isSilent || answer.destroy()));
    });
    onward.on('error', () => answer.destroy());
    answer.on('close', () => onward.destroy());
    onward.end();
  });
  await new Promise<void>((resolve) => front.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(front.address() as AddressInfo).port}/trpc`;
});
afterEach(() => {
  front.closeAllConnections();
  front.close();
});

/** A page's line as it is in a browser, but for the clock and for the source of events, which sends the cookie as a browser would. */
function openLine() {
  class Source extends NodeEventSource {
    constructor(url: string | URL) {
      super(url, { fetch: (input, init) => fetch(input, { ...init, headers: { ...init.headers, cookie } }) });
    }
  }
  const told = { stale: [] as ('all' | readonly string[])[], signedOut: 0 };
  const line = new LiveLine({
    subscribe: subscribeAt(address, Source as unknown as typeof EventSource),
    after: (ms, run) => {
      const timer = setTimeout(run, ms / FASTER);
      return () => clearTimeout(timer);
    },
    chance: () => 0.5,
    stale: (which) => void told.stale.push(which),
    signedOut: () => void (told.signedOut += 1),
  });
  line.open();
  return { line, told };
}

/** Somebody's entry is heard: by its features, or by everything being asked for anew. */
async function expectHeard({ told }: ReturnType<typeof openLine>): Promise<void> {
  await expect.poll(() => told.stale.length).toBeGreaterThan(0);
  told.stale.length = 0;
  await nursery
    .as('grower')
    .stock.addPlace(sent({ placeId: randomUUID(), code: `B-${randomUUID().slice(0, 8)}`, kind: 'bench' as const }));
  await expect.poll(() => told.stale.some((which) => which === 'all' || which.includes('stock'))).toBe(true);
}

const page = '<!doctype html><title>Please wait</title>';
const answers: [string, Between][] = [
  ...[400, 401, 403, 404, 429, 500, 502, 503, 504].flatMap((status): [string, Between][] => [
    [`${status} with a page`, (answer) => void answer.writeHead(status, { 'content-type': 'text/html' }).end(page)],
    [
      `${status} with JSON`,
      (answer) => void answer.writeHead(status, { 'content-type': 'application/json' }).end('{"message":"no"}'),
    ],
  ]),
  ['200 with a page', (answer) => void answer.writeHead(200, { 'content-type': 'text/html' }).end(page)],
  [
    '200 with a stream that ends at once',
    (answer) => void answer.writeHead(200, { 'content-type': 'text/event-stream' }).end(),
  ],
  [
    '200 with a stream of somebody else’s',
    (answer) => void answer.writeHead(200, { 'content-type': 'text/event-stream' }).end('event: hello\ndata: {}\n\n'),
  ],
  ['204', (answer) => void answer.writeHead(204).end()],
  ['a redirect to a page', (answer) => void answer.writeHead(302, { location: '/sign-in' }).end()],
  [
    'a line cut in the midst of the answer',
    (answer) =>
      answer.writeHead(200, { 'content-type': 'text/event-stream' }).write('event: conn', () => answer.destroy()),
  ],
  ['a line cut before any answer', (answer) => answer.destroy()],
];

describe('the line of changes comes back', () => {
  test.each(answers)('after %s', async (_, answer) => {
    between = answer;
    const opened = openLine();
    await expect.poll(() => asked).toBeGreaterThanOrEqual(3);
    expect(opened.told.signedOut).toBe(0);
    between = null;
    await expectHeard(opened);
    opened.line.close();
  });

  test.each(answers)('when it was open, was cut, and then met %s', async (_, answer) => {
    const opened = openLine();
    await expectHeard(opened);
    between = answer;
    for (const each of carried) each.destroy();
    const before = asked;
    await expect.poll(() => asked).toBeGreaterThanOrEqual(before + 3);
    between = null;
    await expectHeard(opened);
    opened.line.close();
  });

  test('after a server that takes the question and never answers', async () => {
    between = () => {};
    const opened = openLine();
    await expect.poll(() => asked).toBeGreaterThanOrEqual(2);
    between = null;
    await expectHeard(opened);
    opened.line.close();
  });

  test('after a line that is open and on which nothing comes any more', async () => {
    const opened = openLine();
    await expectHeard(opened);
    isSilent = true;
    const [silentSince, before] = [performance.now(), asked];
    await expect.poll(() => asked).toBeGreaterThan(before);
    expect(performance.now() - silentSince).toBeGreaterThan((SILENT_MS / FASTER) * 0.5);
    isSilent = false;
    await expectHeard(opened);
    opened.line.close();
  });

  test('after a restart of the server', async () => {
    const opened = openLine();
    await expectHeard(opened);
    await app.close();
    await serve();
    await expectHeard(opened);
    opened.line.close();
  });

  test('and says that the session is over only when the server itself does, and hears again with a new one', async () => {
    const opened = openLine();
    await expectHeard(opened);
    await nursery.sql('UPDATE token SET revoked_at = created_at');
    await expect.poll(() => opened.told.signedOut).toBeGreaterThan(0);
    cookie = await cookieOf(nursery, 'viewer');
    await expectHeard(opened);
    opened.line.close();
  });
});

test('a line that was closed asks no more', async () => {
  const opened = openLine();
  await expectHeard(opened);
  opened.line.close();
  await expect.poll(() => [...carried].every(({ destroyed, writableEnded }) => destroyed || writableEnded)).toBe(true);
  const before = asked;
  between = (answer) => void answer.writeHead(503).end();
  await new Promise((resolve) => setTimeout(resolve, (2 * SILENT_MS) / FASTER));
  expect(asked).toBe(before);
});
