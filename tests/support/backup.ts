// What tests of backups need: databases with nothing in them, and all that a database holds as something to compare.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createDatabase, dropDatabase } from '@rootclock/server/db/databases';
import { LEFT_OUT } from '@rootclock/server/db/backup/left-out';
import { loadBackup } from '@rootclock/server/db/backup/load';
import { takeBackup } from '@rootclock/server/db/backup/take';
import { verifyBackup } from '@rootclock/server/db/backup/verify';
import pg from 'pg';
import { inject } from 'vitest';

/** A database with no table at all, and a folder for a backup and its files. */
export async function openScratch() {
  const folder = mkdtempSync(path.join(tmpdir(), 'rootclock backup '));
  const made: string[] = [];
  return {
    folder,
    file: path.join(folder, 'backup.tar.gz'),
    filesFolder: path.join(folder, 'files'),
    async emptyDatabase(): Promise<string> {
      const name = `test_${randomUUID().replaceAll('-', '')}`;
      await createDatabase(inject('adminUrl'), name);
      made.push(name);
      const url = new URL(inject('adminUrl'));
      url.pathname = `/${name}`;
      return url.href;
    },
    async close() {
      for (const name of made) await dropDatabase(inject('adminUrl'), name);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export type Scratch = Awaited<ReturnType<typeof openScratch>>;

export const take = (ownerUrl: string, { file, filesFolder }: Scratch, signal?: AbortSignal) =>
  takeBackup({ ownerUrl, file, filesFolder, app: 'test', signal });

export async function bringBack(ownerUrl: string, { file }: Scratch, filesFolder: string): Promise<void> {
  await loadBackup({ ownerUrl, file, manifest: await verifyBackup(file), filesFolder });
}

export async function asOwner<Answer>(ownerUrl: string, work: (client: pg.Client) => Promise<Answer>): Promise<Answer> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** All rows of all tables that a backup keeps, as sorted text. */
export function rowsOf(ownerUrl: string): Promise<Record<string, string[]>> {
  return asOwner(ownerUrl, async (client) => {
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT relname::text AS name FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace ORDER BY 1`,
    );
    const all: Record<string, string[]> = {};
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT t::text AS row FROM ${name} t WHERE ${LEFT_OUT[name]?.kept ?? 'true'} ORDER BY 1`,
      );
      all[name] = rows.map(({ row }) => row);
    }
    return all;
  });
}

/** What guards and speeds up the rows: constraints, indexes, triggers and whether they are on, row security. */
export function rulesOf(ownerUrl: string): Promise<string[]> {
  return asOwner(ownerUrl, async (client) => {
    const { rows } = await client.query<{ rule: string }>(`
      SELECT conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) || ' ' || convalidated AS rule
        FROM pg_constraint WHERE connamespace = 'public'::regnamespace
      UNION ALL SELECT indexdef FROM pg_indexes WHERE schemaname = 'public'
      UNION ALL SELECT pg_get_triggerdef(t.oid) || ' ' || tgenabled::text FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
        WHERE NOT tgisinternal AND c.relnamespace = 'public'::regnamespace
      UNION ALL SELECT relname || ' ' || relrowsecurity || relforcerowsecurity FROM pg_class
        WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace
      ORDER BY 1`);
    return rows.map(({ rule }) => rule);
  });
}
