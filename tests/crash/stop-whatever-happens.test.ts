// A server that is asked to end does so within ten seconds, whatever its database does at that moment.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { ask, command, must, send } from '../support/process/http-nursery.ts';
import { type Line, openLine } from '../support/process/cut-line.ts';
import { processesOn, startServer, type ServerProcess } from '../support/process/server-process.ts';

const WITHIN_MS = 10_000;

let database: TestDatabase;
let line: Line;
let DATA_DIR: string;
let server: ServerProcess;

beforeEach(async () => {
  database = await createDatabase();
  line = await openLine(database.url);
  DATA_DIR = mkdtempSync(path.join(tmpdir(), 'rootclock stopping '));
});
afterEach(async () => {
  // What a failed test left running does not hear anything else.
  server.signal('SIGKILL');
  await server.ended;
  await line.close();
  await database.drop();
  rmSync(DATA_DIR, { recursive: true, force: true });
});

async function asOwner(text: string): Promise<void> {
  const client = new pg.Client({ connectionString: database.ownerUrl });
  await client.connect();
  await client.query(text);
  await client.end();
}

/** As at a busy server whose connections all are taken: nobody else is let in, and who is in may be sent away. */
async function useUpConnections(): Promise<void> {
  const name = new URL(database.url).pathname.slice(1);
  await asOwner(`ALTER DATABASE "${name}" CONNECTION LIMIT 0`);
  await asOwner(
    `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '${name}' AND pid <> pg_backend_pid()`,
  );
}

const states: [string, () => Promise<void> | void][] = [
  ['refuses every connection', () => line.behave('refuses')],
  ['takes connections and says nothing', () => line.behave('hangs')],
  ['has no connection left', useUpConnections],
];

/** Ends the server by a signal; answers how long that took. */
async function stopped(): Promise<number> {
  const began = performance.now();
  server.signal('SIGTERM');
  await Promise.race([server.ended, new Promise((resolve) => setTimeout(resolve, WITHIN_MS + 5_000))]);
  return performance.now() - began;
}

describe.each(states)('while the database %s', (_, bring) => {
  test('a server at work ends within ten seconds of SIGTERM', async () => {
    server = startServer({ DATA_DIR, DATABASE_URL: line.url, DATABASE_OWNER_URL: database.ownerUrl });
    const address = await server.address;
    const owner = {
      nurseryName: 'Kept',
      zone: 'America/Chicago',
      name: 'Ada Moor',
      email: 'ada@example.test',
      password: 'ten characters',
    };
    const { cookie } = await must(address, '', command('people.createFirstOwner', owner));
    await bring();
    const hearing = fetch(`${address}/trpc/live.hearChanges`, { headers: { cookie } }).then(
      (answer) => answer.text(),
      () => 'cut',
    );
    const reading = Array.from({ length: 12 }, () =>
      ask(address, cookie, 'potLife.readBoard').catch(() => 'no answer'),
    );
    const writing = send(
      address,
      cookie,
      command('stock.addPlace', { placeId: '00000000-0000-4000-8000-0000000000b1', code: 'B1', kind: 'bench' }),
    );
    expect(await stopped()).toBeLessThan(WITHIN_MS);
    expect(await server.ended).toEqual({ code: 0, signal: null });
    await Promise.all([hearing, writing, ...reading]);
  });

  test('a server that is just starting ends within ten seconds of SIGTERM', async () => {
    await bring();
    server = startServer({ DATA_DIR, DATABASE_URL: line.url, DATABASE_OWNER_URL: line.url });
    await expect.poll(() => server.words()).toContain('Using the PostgreSQL server');
    expect(await stopped()).toBeLessThan(WITHIN_MS);
  });
});

test('a server whose own database stands still ends within ten seconds of SIGTERM, and leaves no process behind', async () => {
  server = startServer({ DATA_DIR });
  await server.address;
  const pid = Number(readFileSync(path.join(DATA_DIR, 'pg18', 'postmaster.pid'), 'utf8').split('\n')[0]);
  process.kill(pid, 'SIGSTOP');
  expect(await stopped()).toBeLessThan(WITHIN_MS);
  await expect.poll(() => processesOn(DATA_DIR)).toEqual([]);
});
