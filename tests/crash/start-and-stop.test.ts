import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { databaseAddress } from '@rootclock/server/db/embedded/cluster';
import { holderOf } from '@rootclock/server/db/embedded/folder-lock';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createDatabase } from '../support/database.ts';
import { endAllServers, processesOn, startServer } from '../support/process/server-process.ts';

// Making a cluster takes longer than all else in these tests together, so it is made once and copied.
let made: string;
beforeAll(async () => {
  made = mkdtempSync(path.join(tmpdir(), 'rootclock made '));
  const server = startServer({ DATA_DIR: made });
  await server.address;
  server.signal('SIGTERM');
  await server.ended;
});
afterAll(() => rmSync(made, { recursive: true, force: true }));

let parent: string;
let DATA_DIR: string;
beforeEach(() => {
  parent = mkdtempSync(path.join(tmpdir(), 'rootclock start '));
  DATA_DIR = path.join(parent, 'data');
});
afterEach(async () => {
  await endAllServers();
  rmSync(parent, { recursive: true, force: true });
});

/** A server on a folder that was used before. */
function startAgain() {
  cpSync(made, DATA_DIR, { recursive: true });
  return startServer({ DATA_DIR });
}

const isReady = async (address: string) => (await fetch(`${address}/ready`)).ok;
const databasePid = () => Number(readFileSync(path.join(DATA_DIR, 'pg18', 'postmaster.pid'), 'utf8').split('\n')[0]);

async function sql(text: string, values: unknown[] = []): Promise<unknown[]> {
  const port = holderOf(DATA_DIR)?.databasePort as number;
  const client = new pg.Client({ connectionString: databaseAddress(DATA_DIR, port, 'rootclock') });
  await client.connect();
  try {
    return (await client.query(text, values)).rows;
  } finally {
    await client.end();
  }
}

const rememberNursery = () =>
  sql(
    `INSERT INTO nursery (id, name, zone, season_end_on) VALUES (gen_random_uuid(), 'Kept', 'America/Chicago', '2027-10-31')`,
  );
const nurseries = () => sql('SELECT name FROM nursery');

describe('starting', () => {
  test('a started server says where it is and answers there', async () => {
    const server = startServer({ DATA_DIR });
    expect(await isReady(await server.address)).toBe(true);
  });

  test('no output ever holds the database’s password', async () => {
    const server = startServer({ DATA_DIR });
    await server.address;
    server.signal('SIGTERM');
    await server.ended;
    expect(server.words()).not.toContain(readFileSync(path.join(DATA_DIR, 'pg-password'), 'utf8').trim());
  });

  test('a second start on the same data folder names the process that holds it, and leaves that one serving', async () => {
    const first = startAgain();
    const address = await first.address;
    const second = startServer({ DATA_DIR });
    expect((await second.ended).code).toBe(1);
    expect(second.words()).toContain(`held by process ${first.pid}`);
    expect(second.words()).toContain(address);
    expect(await isReady(address)).toBe(true);
  });

  test('of two starts at the same moment one serves and the other names it', async () => {
    const both = [startServer({ DATA_DIR }), startServer({ DATA_DIR })] as const;
    const loser = await Promise.any(
      both.map(async (server) =>
        (await server.ended).code === 1 ? server : Promise.reject(new Error('ended otherwise')),
      ),
    );
    const winner = both[0] === loser ? both[1] : both[0];
    expect(loser.words()).toContain(`held by process ${winner.pid}`);
    expect(await isReady(await winner.address)).toBe(true);
  });

  test('a given database is served from without touching the data folder', async () => {
    const { url, ownerUrl, drop } = await createDatabase();
    const server = startServer({ DATA_DIR, DATABASE_URL: url, DATABASE_OWNER_URL: ownerUrl });
    expect(await isReady(await server.address)).toBe(true);
    server.signal('SIGTERM');
    await server.ended;
    await drop();
    expect(existsSync(DATA_DIR)).toBe(false);
  });
});

describe('a start that fails', () => {
  let taken: Server | undefined;
  afterEach(() => taken?.close());

  test('for a busy port says so and leaves no process behind', async () => {
    const other = createServer();
    taken = other;
    const port = await new Promise<number>((resolve) =>
      other.listen(0, '127.0.0.1', () => resolve((other.address() as AddressInfo).port)),
    );
    const server = startServer({ DATA_DIR, PORT: String(port) });
    expect((await server.ended).code).toBe(1);
    expect(server.words()).toContain(`Port ${port} on 127.0.0.1 is taken`);
    expect(processesOn(DATA_DIR)).toEqual([]);
  });

  test('for a migration edited after it was applied says so and leaves no process behind', async () => {
    const first = startAgain();
    await first.address;
    await sql(`UPDATE _prisma_migrations SET checksum = 'other'`);
    first.signal('SIGTERM');
    await first.ended;
    const second = startServer({ DATA_DIR });
    expect((await second.ended).code).toBe(1);
    expect(second.words()).toMatch(/was edited after it was applied/);
    expect(processesOn(DATA_DIR)).toEqual([]);
  });

  test('because it was stopped before it was complete leaves no process behind', async () => {
    const server = startServer({ DATA_DIR });
    await expect
      .poll(() => existsSync(path.join(DATA_DIR, 'rootclock.lock')), { timeout: 20_000, interval: 5 })
      .toBe(true);
    server.signal('SIGTERM');
    expect(await server.ended).toEqual({ code: 0, signal: null });
    expect(processesOn(DATA_DIR)).toEqual([]);
  });
});

describe('stopping', () => {
  test.each(['SIGINT', 'SIGTERM'] as const)('%s stops the server first and the database last', async (signal) => {
    const server = startAgain();
    await server.address;
    server.signal(signal);
    expect(await server.ended).toEqual({ code: 0, signal: null });
    expect(server.words()).toMatch(/Stopped the server\.\nStopped the database\.\n$/);
    expect(processesOn(DATA_DIR)).toEqual([]);
  });

  test('a signal sent twice, as npm and a terminal do, changes nothing', async () => {
    const server = startAgain();
    await server.address;
    server.signal('SIGINT');
    server.signal('SIGINT');
    expect(await server.ended).toEqual({ code: 0, signal: null });
    expect(server.words()).toMatch(/Stopped the database\.\n$/);
  });
});

describe('after a kill', () => {
  test('of the server, a new start stops the database left behind and finds everything again', async () => {
    const first = startAgain();
    await first.address;
    await rememberNursery();
    first.signal('SIGKILL');
    await first.ended;
    const left = databasePid();
    expect(processesOn(DATA_DIR)).not.toEqual([]);
    await startServer({ DATA_DIR }).address;
    expect(databasePid()).not.toBe(left);
    expect(await nurseries()).toEqual([{ name: 'Kept' }]);
  });

  test('of the database, the server says so and ends with an error, and a new start finds everything again', async () => {
    const first = startAgain();
    await first.address;
    await rememberNursery();
    process.kill(databasePid(), 'SIGKILL');
    expect((await first.ended).code).toBe(1);
    expect(first.words()).toContain('the database ended by itself');
    await startServer({ DATA_DIR }).address;
    expect(await nurseries()).toEqual([{ name: 'Kept' }]);
  });

  test('of both at once, a new start finds everything again', async () => {
    const first = startAgain();
    await first.address;
    await rememberNursery();
    process.kill(databasePid(), 'SIGKILL');
    first.signal('SIGKILL');
    await first.ended;
    await startServer({ DATA_DIR }).address;
    expect(await nurseries()).toEqual([{ name: 'Kept' }]);
  });
});
