import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import pg from 'pg';
import { rounded } from './measure/figures.ts';

export interface Machine {
  cores: number;
  processor: string;
  memoryGb: number;
  node: string;
  postgres: string;
  platform: string;
  /** Milliseconds to keep one page on the disk of the database: a cache that is not for good makes this small. */
  syncMs: number;
  /** Programs that wanted to run, over the last minute: figures of a busy machine are not those of a quiet one. */
  loadBefore: number;
}

export async function machineOf(adminUrl: string, syncMs: number): Promise<Machine> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  const { rows: [server] } = await client.query<{ version: string }>(`SELECT current_setting('server_version') AS version`);
  await client.end();
  return {
    cores: availableParallelism(), processor: cpus()[0]?.model ?? 'unknown', memoryGb: rounded(totalmem() / 2 ** 30, 1), node: process.version,
    postgres: server?.version ?? 'unknown', platform: `${process.platform} ${process.arch}`, syncMs: rounded(syncMs), loadBefore: loadNow(),
  };
}

export const loadNow = () => rounded(loadavg()[0] ?? 0);
