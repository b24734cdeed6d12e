import * as z from 'zod/mini';
import { readMigrations } from './migrate.ts';
import type { Database } from './pool.ts';

const readyRow = z.strictObject({ name: z.string() });

/** Whether the database answers and has every migration of this copy; one that a newer copy has moved on is no longer ours to serve. */
export async function isReady(database: Database): Promise<boolean> {
  const rows = await database.rows(readyRow)`SELECT name FROM applied_migrations()`;
  const applied = new Set(rows.map(({ name }) => name));
  const own = readMigrations();
  return own.length === applied.size && own.every(({ name }) => applied.has(name));
}
