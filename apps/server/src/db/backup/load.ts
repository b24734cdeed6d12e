import { pipeline } from 'node:stream/promises';
import pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { migrate, PRISMA_LOCK, readMigrations } from '../migrate.ts';
import { readArchive } from './archive.ts';
import { BackupFailure } from './failure.ts';
import { putBack } from './files.ts';
import { relativeFileOf, tableOf, type Manifest, type TableInBackup } from './manifest.ts';
import { columnList, PLAIN_VALUES, readTables } from './tables.ts';
import { migrationsFor } from './verify.ts';

export interface LoadWanted {
  /** A database without a nursery, that nobody else is connected to. */
  ownerUrl: string;
  file: string;
  manifest: Manifest;
  filesFolder: string;
  /** All migrations of this copy. */
  migrations?: ReturnType<typeof readMigrations>;
}

/**
 * Brings a verified backup into an empty database: migrated as far as the one it was taken from, all rows in one
 * transaction, then migrated on. Throws BackupFailure, with nothing loaded, where the database is in use or not empty.
 */
export async function loadBackup(wanted: LoadWanted): Promise<void> {
  const { ownerUrl, manifest, migrations = readMigrations() } = wanted;
  const fitting = migrationsFor(manifest, migrations);
  await connected(ownerUrl, async (client) => {
    await refuseUsed(client);
    await refuseFurther(client, manifest);
  });
  await migrate(ownerUrl, fitting);
  await connected(ownerUrl, (client) => loadRows(client, wanted));
  await migrate(ownerUrl, migrations);
  await connected(ownerUrl, (client) => client.query('ANALYZE'));
}

async function connected(ownerUrl: string, work: (client: pg.Client) => Promise<unknown>): Promise<void> {
  const client = new pg.Client({ connectionString: ownerUrl, application_name: 'rootclock restore' });
  await client.connect();
  try {
    await work(client);
  } finally {
    await client.end();
  }
}

const isThere = async (client: pg.Client, table: string) =>
  (await client.query('SELECT FROM pg_class WHERE oid = to_regclass($1)', [table])).rowCount === 1;

/** A server that found its tables filled under its hands would go on with what it remembered of them. */
async function refuseUsed(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ others: number }>(`
    SELECT count(*)::int AS others FROM pg_stat_activity
     WHERE datname = current_database() AND pid <> pg_backend_pid() AND usename IS NOT NULL`);
  if ((rows[0]?.others ?? 0) === 0) return;
  throw new BackupFailure(
    'Rootclock or another program is connected to this database. Stop it, then restore again. Nothing was changed.',
  );
}

/** Throws BackupFailure where the database of this address has a nursery. */
export function refuseNursery(ownerUrl: string): Promise<void> {
  return connected(ownerUrl, async (client) => {
    if (await isThere(client, 'nursery')) await refuseFilled(client);
  });
}

/** Rows of a younger shape cannot be told from those of an older one, so a database never goes back. */
async function refuseFurther(client: pg.Client, { migrations }: Manifest): Promise<void> {
  if (await isThere(client, 'nursery')) await refuseFilled(client);
  if (!(await isThere(client, '_prisma_migrations'))) return;
  const known = new Set(migrations.map(({ name }) => name));
  const { rows } = await client.query<{ name: string }>(
    'SELECT migration_name AS name FROM _prisma_migrations WHERE rolled_back_at IS NULL',
  );
  if (rows.every(({ name }) => known.has(name))) return;
  throw new BackupFailure(
    'This database is empty but newer than the backup. Make a new database and restore into that. Nothing was changed.',
  );
}

async function refuseFilled(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ name: string }>('SELECT name FROM nursery ORDER BY name LIMIT 1');
  if (rows.length === 0) return;
  throw new BackupFailure(
    `There is a nursery here already (${rows[0]?.name}). Restore into an empty database. Nothing was changed.`,
  );
}

async function loadRows(client: pg.Client, { file, manifest, filesFolder }: LoadWanted): Promise<void> {
  await client.query('BEGIN');
  await client.query(PLAIN_VALUES);
  // A server that starts meanwhile waits here before it looks at anything.
  await client.query('SELECT pg_advisory_xact_lock($1)', [PRISMA_LOCK]);
  const rules = await liftRules(client);
  // Asked again now that nobody else can write.
  await refuseFilled(client);
  const byName = new Map(manifest.tables.map((table) => [table.name, table]));
  const members = readArchive(file);
  for (let next = await members.next(); next.done !== true;) {
    const { name, bytes } = next.value;
    const table = byName.get(tableOf(name) ?? '');
    const relative = relativeFileOf(name);
    if (table !== undefined) {
      const pieces = async function* () {
        for (; next.done !== true && tableOf(next.value.name) === table.name; next = await members.next())
          yield next.value.bytes;
      };
      await copyIn(client, table, pieces());
      continue;
    }
    if (relative !== undefined) await putBack(filesFolder, relative, bytes);
    next = await members.next();
  }
  for (const { name, last } of manifest.sequences)
    if (last !== null) await client.query('SELECT setval($1::regclass, $2)', [pg.escapeIdentifier(name), last]);
  await layRulesDown(client, rules);
  await client.query('COMMIT');
}

async function copyIn(client: pg.Client, { name, columns, rows }: TableInBackup, pieces: AsyncIterable<Buffer>) {
  const into = client.query(
    copyFrom(`COPY ${pg.escapeIdentifier(name)} (${columnList(columns)}) FROM STDIN (FORMAT csv, HEADER MATCH)`),
  );
  await pipeline(pieces, into);
  if (into.rowCount !== rows) throw new BackupFailure(`${name} should have ${rows} rows and got ${into.rowCount}.`);
}

interface Rule {
  lift: string;
  lay: string;
}

/**
 * Balances, lineage and the like are in the backup, so the triggers that keep them must not run a second time, and rows come
 * in no order that foreign keys could follow. Both are put back before the commit, which proves the keys over all rows;
 * a plain owner may do that, where switching triggers off for the session takes a superuser.
 */
async function liftRules(client: pg.Client): Promise<Rule[]> {
  const { rows: keys } = await client.query<Rule>(`
    SELECT format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname) AS lift,
           format('ALTER TABLE %s ADD CONSTRAINT %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid)) AS lay
      FROM pg_constraint
     WHERE contype = 'f' AND connamespace = current_schema()::regnamespace AND conparentid = 0 ORDER BY conname`);
  const { rows: triggers } = await client.query<Rule>(`
    SELECT format('ALTER TABLE %s DISABLE TRIGGER %I', tgrelid::regclass, tgname) AS lift,
           format('ALTER TABLE %s ENABLE TRIGGER %I', tgrelid::regclass, tgname) AS lay
      FROM pg_trigger JOIN pg_class c ON c.oid = tgrelid
     WHERE NOT tgisinternal AND tgenabled = 'O' AND c.relnamespace = current_schema()::regnamespace ORDER BY tgname`);
  const rules = [...keys, ...triggers];
  for (const { lift } of rules) await client.query(lift);
  for (const { name } of await readTables(client))
    await client.query(`LOCK TABLE ${pg.escapeIdentifier(name)} IN ACCESS EXCLUSIVE MODE`);
  return rules;
}

async function layRulesDown(client: pg.Client, rules: readonly Rule[]): Promise<void> {
  // What a deferred key still has to look at would keep its table from being altered.
  await client.query('SET CONSTRAINTS ALL IMMEDIATE');
  for (const { lay } of rules) await client.query(lay);
}
