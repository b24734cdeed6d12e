// A PostgreSQL server for this run alone, in a folder of its own, with the settings that real use has: what is committed is on disk.
import { fsyncSync, closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbedded } from '@rootclock/server/db/embedded';
import { median } from './measure/figures.ts';

export interface Cluster {
  url(database: string): string;
  /** Milliseconds that the folder's disk takes to keep one page for good: the least that a commit can take. */
  syncMs: number;
  stop(): Promise<void>;
}

export async function startCluster(parent = tmpdir()): Promise<Cluster> {
  const folder = mkdtempSync(path.join(parent, 'rootclock-bench-'));
  let pid: number | undefined;
  // A run that is broken off must not leave its server or its gigabytes behind.
  const breakOff = () => {
    if (pid !== undefined) process.kill(pid, 'SIGQUIT');
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  process.once('exit', breakOff);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(1));
  const syncMs = syncTime(folder);
  const server = await startEmbedded(folder);
  pid = server.pid;
  return {
    url: server.url,
    syncMs,
    async stop() {
      process.off('exit', breakOff);
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function syncTime(folder: string): number {
  const file = openSync(path.join(folder, 'sync-trial'), 'w');
  const page = Buffer.alloc(8192, 1);
  const times = Array.from({ length: 50 }, () => {
    const started = performance.now();
    writeSync(file, page, 0, page.length, 0);
    fsyncSync(file);
    return performance.now() - started;
  });
  closeSync(file);
  rmSync(path.join(folder, 'sync-trial'));
  return median(times);
}
