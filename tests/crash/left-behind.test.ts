import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { stopOrphan } from '@rootclock/server/db/embedded/orphan';
import { isAlive } from '@rootclock/server/db/embedded/processes';
import { afterEach, beforeEach, expect, test } from 'vitest';

let folder: string;
let bystander: ChildProcess;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'rootclock-orphan-'));
  bystander = spawn(process.execPath, ['-e', 'process.stdin.resume()'], { stdio: ['pipe', 'ignore', 'ignore'] });
});
afterEach(() => {
  bystander.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

test('a process that is no database on this folder is left alone, even when the folder names its number', async () => {
  writeFileSync(path.join(folder, 'postmaster.pid'), `${bystander.pid}\n${folder}\n`);
  await stopOrphan(folder);
  expect(isAlive(bystander.pid as number)).toBe(true);
});

test('a folder without a noted process needs nothing', async () => {
  await expect(stopOrphan(folder)).resolves.toBeUndefined();
});
