// Applies the hand-written migrations with Prisma's own table, checksums and lock number, so that its command line tool
// can take over a database at any time.
import { createHash, randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import pg from 'pg';
import { repositoryRoot } from '../config.ts';

export const migrationsFolder = path.join(repositoryRoot, 'prisma', 'migrations');
const oldestServer = 15;
/** Prisma’s own number; whoever changes a database as a whole holds it. */
export const PRISMA_LOCK = 72707369;

export interface Migration {
  name: string;
  sql: string;
  checksum: string;
}

/** The state of the database does not fit this copy of Rootclock. The message says what to do. */
export class MigrationError extends Error {
  override name = 'MigrationError';
}

/** The migrations of this copy, oldest first. */
export function readMigrations(folder = migrationsFolder): Migration[] {
  return readdirSync(folder)
    .filter((name) => /^\d{14}_/.test(name))
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

interface Applied {
  migration_name: string;
  checksum: string;
  finished_at: Date | null;
}

/** Which migrations are still to be applied. Throws MigrationError when history and folder contradict each other. */
export function pendingAfter(applied: Applied[], migrations: Migration[]): Migration[] {
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const row of applied) {
    const migration = known.get(row.migration_name);
    if (row.finished_at === null) {
      throw new MigrationError(
        `Migration ${row.migration_name} began and did not finish. Restore a backup, or repair it by hand, before starting again.`,
      );
    }
    if (migration === undefined) {
      throw new MigrationError(
        `The database has the migration ${row.migration_name}, which this copy of Rootclock does not know: a newer version has used it.`,
      );
    }
    if (migration.checksum !== row.checksum) {
      throw new MigrationError(
        `Migration ${row.migration_name} was edited after it was applied to this database. Put the old text back and write a new migration.`,
      );
    }
  }
  const done = new Set(applied.map((row) => row.migration_name));
  return migrations.filter((migration) => !done.has(migration.name));
}

const appliedSql = 'SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL';

async function refuseOldServer(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ number: string; version: string }>(
    `SELECT current_setting('server_version_num') AS number, current_setting('server_version') AS version`,
  );
  if (Number(rows[0]?.number) >= oldestServer * 10_000) return;
  throw new MigrationError(`Rootclock needs PostgreSQL ${oldestServer} or later; this server is ${rows[0]?.version}.`);
}

/** The place in a migration that the server complained about, as a line number people can go to. */
function lineOf(sql: string, error: unknown): string {
  const position = Number((error as pg.DatabaseError).position);
  return Number.isInteger(position) && position > 0 ? `, line ${sql.slice(0, position).split('\n').length}` : '';
}

/**
 * Brings the database of this owner's address up to date, each migration in a transaction of its own, one process at a
 * time. Returns the names of those applied. Throws MigrationError when it cannot; the failed migration leaves no trace.
 */
export async function migrate(ownerUrl: string, migrations = readMigrations()): Promise<string[]> {
  const client = new pg.Client({ connectionString: ownerUrl, application_name: 'rootclock migrate' });
  await client.connect();
  try {
    await refuseOldServer(client);
    await client.query('SELECT pg_advisory_lock($1)', [PRISMA_LOCK]);
    await client.query(`CREATE TABLE IF NOT EXISTS _prisma_migrations (
      id varchar(36) PRIMARY KEY, checksum varchar(64) NOT NULL, finished_at timestamptz, migration_name varchar(255) NOT NULL,
      logs text, rolled_back_at timestamptz, started_at timestamptz NOT NULL DEFAULT now(), applied_steps_count integer NOT NULL DEFAULT 0)`);
    const pending = pendingAfter((await client.query<Applied>(appliedSql)).rows, migrations);
    for (const migration of pending) await apply(client, migration);
    return pending.map((migration) => migration.name);
  } finally {
    await client.end();
  }
}

async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('BEGIN');
  try {
    await client.query(sql);
    await client.query(
      'INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count) VALUES ($1, $2, $3, clock_timestamp(), 1)',
      [randomUUID(), checksum, name],
    );
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    throw new MigrationError(`Migration ${name}${lineOf(sql, error)}: ${(error as Error).message}`, { cause: error });
  }
}
