import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { FolderHeldError, holderOf, holdFolder } from '@rootclock/server/db/embedded/folder-lock';
import { startMark } from '@rootclock/server/db/embedded/processes';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'rootclock lock '));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const leaveLock = (pid: number, mark: string | undefined) =>
  writeFileSync(
    path.join(folder, 'rootclock.lock'),
    JSON.stringify({
      id: 'left behind',
      pid,
      mark,
      since: '2026-04-01T08:00:00.000Z',
      purpose: 'serve',
      address: 'http://127.0.0.1:4310',
    }),
  );

/** A pid above what Linux, macOS and Windows give out in practice, so that no process has it. */
const nobodysPid = 2 ** 30;

describe('a data folder', () => {
  test('is held by one process at a time', () => {
    holdFolder(folder, 'serve');
    expect(() => holdFolder(folder, 'check')).toThrow(FolderHeldError);
  });

  test('is free again after its holder let go', () => {
    holdFolder(folder, 'serve').release();
    expect(() => holdFolder(folder, 'check')).not.toThrow();
  });

  test('names its holder, since when, and its address', () => {
    leaveLock(process.pid, startMark(process.pid));
    expect(() => holdFolder(folder, 'check')).toThrow(
      new RegExp(
        `held by process ${process.pid}, which has run "serve" since 2026-04-01 08:00 UTC and answers at http://127.0.0.1:4310`,
      ),
    );
  });

  test('is taken over from a process that is gone', () => {
    leaveLock(nobodysPid, 'any');
    holdFolder(folder, 'serve');
    expect(holderOf(folder)?.pid).toBe(process.pid);
  });

  test('is taken over when its holder’s number now belongs to another process', () => {
    leaveLock(process.pid, 'a mark of an earlier process');
    holdFolder(folder, 'check');
    expect(holderOf(folder)?.purpose).toBe('check');
  });

  test('tells others where its database listens once that is known', () => {
    holdFolder(folder, 'serve').announce({ databasePort: 5433 });
    expect(holderOf(folder)?.databasePort).toBe(5433);
  });

  test('keeps another’s lock when a late holder lets go', () => {
    const late = holdFolder(folder, 'serve');
    leaveLock(process.pid, startMark(process.pid));
    late.release();
    expect(readFileSync(path.join(folder, 'rootclock.lock'), 'utf8')).toContain('left behind');
  });
});
