// `npm start` as a whole: a signal that reaches only npm must still stop the server and its database.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { holderOf } from '@rootclock/server/db/embedded/folder-lock';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { processesOn } from '../support/process/server-process.ts';

let DATA_DIR: string;
let npm: ChildProcess;
beforeEach(() => {
  DATA_DIR = mkdtempSync(path.join(tmpdir(), 'rootclock npm '));
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...environment } = process.env;
  npm = spawn('npm', ['start'], {
    cwd: repositoryRoot,
    env: { ...environment, DATA_DIR, PORT: '0', ROOTCLOCK_DEMO: 'off' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
});
afterEach(async () => {
  const holder = holderOf(DATA_DIR);
  if (holder !== undefined) {
    process.kill(holder.pid, 'SIGTERM');
    await vi.waitUntil(() => processesOn(DATA_DIR).length === 0, { timeout: 20_000 });
  }
  rmSync(DATA_DIR, { recursive: true, force: true });
});

test.each(['SIGINT', 'SIGTERM'] as const)(
  '%s to npm alone stops the server first, the database last, and leaves nothing',
  async (signal) => {
    let said = '';
    const closed = new Promise((resolve) => npm.once('close', resolve));
    await new Promise<void>((resolve, reject) => {
      npm.stdout?.setEncoding('utf8').on('data', (words: string) => {
        said += words;
        if (said.includes('is ready at')) resolve();
      });
      void closed.then(() => reject(new Error(`npm start ended before the server was ready:\n${said}`)));
    });
    npm.kill(signal);
    await closed;
    expect(said).toMatch(/Stopped the server\.\nStopped the database\.\n$/);
    expect(processesOn(DATA_DIR)).toEqual([]);
  },
  180_000,
);
