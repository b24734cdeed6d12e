import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import pg from 'pg';
import { rounded } from './measure/figures.ts';

export interface Host {
  cores: number;
  processor: string;
  memoryGb: number;
  node: string;
  platform: string;
  /** Programs that wanted to run, over the last minute: figures of a busy machine are not those of a quiet one. */
  loadBefore: number;
}

export interface Machine extends Host {
  postgres: string;
  /** Milliseconds to keep one page on the disk of the database: a cache that is not for good makes this small. */
  syncMs: number;
}

export const hostNow = (): Host => ({
  cores: availableParallelism(),
  processor: cpus()[0]?.model ?? 'unknown',
  memoryGb: rounded(totalmem() / 2 ** 30, 1),
  node: process.version,
  platform: `${process.platform} ${process.arch}`,
  loadBefore: loadNow(),
});

export async function machineOf(adminUrl: string, syncMs: number): Promise<Machine> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  const {
    rows: [server],
  } = await client.query<{ version: string }>(`SELECT current_setting('server_version') AS version`);
  await client.end();
  return { ...hostNow(), postgres: server?.version ?? 'unknown', syncMs: rounded(syncMs) };
}

export const loadNow = () => rounded(loadavg()[0] ?? 0);
