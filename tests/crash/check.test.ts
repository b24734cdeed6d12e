// `rootclock check` on the embedded database: beside a server that runs, and on its own.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { databaseAddress } from '@rootclock/server/db/embedded/cluster';
import { holderOf } from '@rootclock/server/db/embedded/folder-lock';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rootclock } from '../support/process/command-line.ts';
import { endAllServers, processesOn, startServer, type ServerProcess } from '../support/process/server-process.ts';

const check = (dataDir: string) => rootclock(['check'], { env: { DATA_DIR: dataDir } });

let parent: string;
let DATA_DIR: string;
let server: ServerProcess;
beforeAll(async () => {
  parent = mkdtempSync(path.join(tmpdir(), 'rootclock check '));
  DATA_DIR = path.join(parent, 'data');
  server = startServer({ DATA_DIR });
  await server.address;
});
afterAll(async () => {
  await endAllServers();
  rmSync(parent, { recursive: true, force: true });
});

describe('rootclock check', () => {
  test('proves the laws beside a running server', async () => {
    const { code, out } = await check(DATA_DIR);
    expect(out).toMatch(/All \d+ laws hold/);
    expect(code).toBe(0);
  });

  test('names a law that is broken, with exit code 1', async () => {
    const client = new pg.Client({
      connectionString: databaseAddress(DATA_DIR, holderOf(DATA_DIR)?.databasePort as number, 'rootclock'),
    });
    await client.connect();
    await client.query('ALTER TABLE movement DISABLE ROW LEVEL SECURITY');
    const { code, out } = await check(DATA_DIR);
    await client.query('ALTER TABLE movement ENABLE ROW LEVEL SECURITY');
    await client.end();
    expect(out).toMatch(/BROKEN nursery-apart[\s\S]*movement/);
    expect(code).toBe(1);
  });

  test('proves the laws without a server, and leaves no process behind', async () => {
    server.signal('SIGTERM');
    await server.ended;
    const { code, out } = await check(DATA_DIR);
    expect(out).toMatch(/All \d+ laws hold/);
    expect(code).toBe(0);
    expect(processesOn(DATA_DIR)).toEqual([]);
  });

  test('says so where there is no nursery yet', async () => {
    const { code, err } = await check(path.join(parent, 'none'));
    expect(err).toMatch(/There is no nursery in .* yet/);
    expect(code).toBe(1);
  });
});
