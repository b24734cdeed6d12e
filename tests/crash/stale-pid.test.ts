// After a reboot the number in postmaster.pid may belong to anything, and a disk may be too small to begin with.
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbedded, type EmbeddedServer } from '@rootclock/server/db/embedded';
import { clusterFolder } from '@rootclock/server/db/embedded/cluster';
import { isAlive, isSurelyOther } from '@rootclock/server/db/embedded/processes';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

const folders: string[] = [];
const servers: EmbeddedServer[] = [];
let bystander: ChildProcess;

const newFolder = () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'rootclock-stale-'));
  folders.push(folder);
  return folder;
};
const start = async (dataDir: string) => {
  const server = await startEmbedded(dataDir, { durable: false });
  servers.push(server);
  return server;
};
const pidFile = (dataDir: string) => path.join(clusterFolder(dataDir), 'postmaster.pid');

/** A cluster whose server was killed and whose file names another process meanwhile. */
async function clusterNaming(pid: number): Promise<string> {
  const dataDir = newFolder();
  const server = await start(dataDir);
  const left = readFileSync(pidFile(dataDir), 'utf8');
  await server.stop();
  writeFileSync(pidFile(dataDir), left.replace(/^\d+/, String(pid)), { mode: 0o600 });
  return dataDir;
}

async function answers(server: EmbeddedServer): Promise<boolean> {
  const client = new pg.Client({ connectionString: server.url('postgres') });
  await client.connect();
  const { rowCount } = await client.query('SELECT 1');
  await client.end();
  return rowCount === 1;
}

beforeEach(() => {
  bystander = spawn(process.execPath, ['-e', 'process.stdin.resume()'], { stdio: ['pipe', 'ignore', 'ignore'] });
});
afterEach(async () => {
  bystander.kill('SIGKILL');
  for (const server of servers.splice(0)) await server.stop();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe('a postmaster.pid that names a living process', () => {
  test('that is no PostgreSQL does not stop the start, nor is that process touched', async () => {
    const dataDir = await clusterNaming(bystander.pid as number);
    expect(await answers(await start(dataDir))).toBe(true);
    expect(isAlive(bystander.pid as number)).toBe(true);
  });

  test('that is a PostgreSQL of another folder does not stop the start, nor is that server touched', async () => {
    const other = await start(newFolder());
    const dataDir = await clusterNaming(other.pid);
    expect(await answers(await start(dataDir))).toBe(true);
    expect(await answers(other)).toBe(true);
  });

  test('that has ended, but nobody took notice of its end, does not stop the start', async () => {
    // Its parent becomes a program that waits for no child; the shell itself would take notice, so the end comes after.
    const negligent = spawn('sh', ['-c', 'sleep 600 & echo $!; exec sleep 600'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    try {
      const [told] = (await once(negligent.stdout, 'data')) as [Buffer];
      const ended = Number(told.toString());
      await expect.poll(() => readFileSync(`/proc/${negligent.pid}/comm`, 'utf8')).toBe('sleep\n');
      process.kill(ended, 'SIGKILL');
      await expect.poll(() => isAlive(ended)).toBe(false);
      expect(process.kill(ended, 0)).toBe(true);
      expect(await answers(await start(await clusterNaming(ended)))).toBe(true);
    } finally {
      negligent.kill('SIGKILL');
    }
  });

  test('that is a PostgreSQL of this folder is never taken for another, by whatever name the folder is called', async () => {
    const dataDir = newFolder();
    const { pid } = await start(dataDir);
    expect(isSurelyOther(pid, clusterFolder(dataDir))).toBe(false);
    expect(isSurelyOther(pid, path.join(dataDir, '.', 'pg18', '..', 'pg18'))).toBe(false);
    expect(isSurelyOther(bystander.pid as number, clusterFolder(dataDir))).toBe(true);
  });
});

describe('a first start', () => {
  test('on a disk that is too small says how much is free and how much is needed, and leaves nothing there', async () => {
    const dataDir = newFolder();
    await expect(startEmbedded(dataDir, { durable: false, freeBytes: () => 41_900_000 })).rejects.toThrow(
      `The disk that holds ${dataDir} is too full: 41 MB are free and 300 MB are needed. Free some space, or set DATA_DIR to a folder on another disk.`,
    );
    expect(readdirSync(dataDir)).toEqual([]);
  });

  test('is the only one that is asked for room', async () => {
    const dataDir = newFolder();
    await (await start(dataDir)).stop();
    const server = await startEmbedded(dataDir, { durable: false, freeBytes: () => 0 });
    servers.push(server);
    expect(await answers(server)).toBe(true);
  });
});
