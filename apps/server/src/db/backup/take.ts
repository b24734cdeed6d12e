import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { writeArchive, type Writing } from './archive.ts';
import { BackupFailure } from './failure.ts';
import { fileNames, readKept } from './files.ts';
import { LEFT_OUT } from './left-out.ts';
import {
  fileMember,
  FORMAT,
  FORMAT_VERSION,
  MANIFEST,
  pieceOf,
  type Manifest,
  type Member,
  type TableInBackup,
} from './manifest.ts';
import { columnList, PLAIN_VALUES, readTables, type Table } from './tables.ts';

export interface BackupWanted {
  ownerUrl: string;
  /** Where the backup goes; nothing may lie there. */
  file: string;
  filesFolder: string;
  /** The version of Rootclock, for whoever reads the manifest. */
  app: string;
  tell?: (line: string) => void;
  /** Breaks it off; nothing is left behind then. */
  signal?: AbortSignal | undefined;
}

const PIECE_BYTES = 4 * 1024 * 1024;
/** Tables below this many rows are copied in a blink and not told of one by one. */
const MANY_ROWS = 50_000;

/** Takes a backup of the whole database and its files beside whoever works with it. Answers its manifest. */
export async function takeBackup(wanted: BackupWanted): Promise<Manifest> {
  const { ownerUrl, file } = wanted;
  refuseTaken(file);
  const client = new pg.Client({ connectionString: ownerUrl, application_name: 'rootclock backup' });
  await client.connect();
  const part = `${file}.${process.pid}.part`;
  let archive: Writing | undefined;
  const drop = () => {
    archive?.abandon();
    rmSync(part, { force: true });
  };
  wanted.signal?.addEventListener('abort', drop);
  try {
    // One snapshot for all tables; reading takes no lock that a write waits for.
    await client.query(`BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY`);
    await client.query(PLAIN_VALUES);
    const facts = await readFacts(client);
    archive = writeArchive(part, new Date(facts.takenAt));
    const manifest = await fill(client, archive, facts, wanted);
    await archive.close();
    wanted.signal?.throwIfAborted();
    refuseTaken(file);
    renameSync(part, file);
    syncFolder(path.dirname(file));
    return manifest;
  } catch (error) {
    drop();
    throw error;
  } finally {
    wanted.signal?.removeEventListener('abort', drop);
    await client.end();
  }
}

function refuseTaken(file: string): void {
  if (existsSync(file)) throw new BackupFailure(`${file} is there already. Choose another name.`);
  if (!existsSync(path.dirname(file))) throw new BackupFailure(`There is no folder ${path.dirname(file)}.`);
}

type Facts = Pick<Manifest, 'takenAt' | 'postgres' | 'migrations' | 'sequences'>;

async function readFacts(client: pg.Client): Promise<Facts> {
  const { rows: made } = await client.query(`SELECT FROM pg_class WHERE oid = to_regclass('nursery')`);
  if (made.length === 0) throw new BackupFailure('There is no nursery in this database yet.');
  // The first statement that reads a table takes the snapshot, so the moment is told with it.
  const { rows: migrations } = await client.query<{ name: string; checksum: string; at: Date }>(`
    SELECT migration_name AS name, checksum, clock_timestamp() AS at
      FROM _prisma_migrations WHERE rolled_back_at IS NULL AND finished_at IS NOT NULL ORDER BY migration_name`);
  const { rows: sequences } = await client.query<{ name: string; last: string | null }>(`
    SELECT sequencename::text AS name, last_value::text AS last
      FROM pg_sequences WHERE schemaname = current_schema() ORDER BY sequencename`);
  const { rows: server } = await client.query<{ version: string }>(
    `SELECT current_setting('server_version') AS version`,
  );
  return {
    takenAt: (migrations[0]?.at ?? new Date()).toISOString(),
    postgres: server[0]?.version ?? '',
    migrations: migrations.map(({ name, checksum }) => ({ name, checksum })),
    sequences,
  };
}

async function fill(
  client: pg.Client,
  archive: Writing,
  facts: Facts,
  { filesFolder, app, tell = () => {}, signal }: BackupWanted,
): Promise<Manifest> {
  const members: Member[] = [];
  const add = async (name: string, bytes: Buffer) => {
    signal?.throwIfAborted();
    members.push(await archive.add(name, bytes));
  };
  const tables: TableInBackup[] = [];
  for (const table of await readTables(client)) {
    const leftOut = LEFT_OUT[table.name];
    if (leftOut?.kept === 'false') continue;
    const rows = await copyOut(client, table, leftOut?.kept, add);
    tables.push({ ...table, rows, ...(leftOut ? { leftOut: leftOut.why } : {}) });
    if (rows >= MANY_ROWS) tell(`  ${table.name}: ${rows} rows`);
  }
  const absent: string[] = [];
  for (const name of await fileNames(client)) {
    const bytes = await readKept(filesFolder, name);
    if (bytes === undefined) absent.push(name);
    else await add(fileMember(name), bytes);
  }
  await client.query('COMMIT');
  // What was blanked since the snapshot is rightly gone.
  const named = new Set(absent.length > 0 ? await fileNames(client) : []);
  const missingFiles = absent.filter((name) => named.has(name));
  const manifest: Manifest = {
    format: FORMAT,
    version: FORMAT_VERSION,
    app,
    ...facts,
    tables,
    missingFiles,
    members: [...members],
  };
  await archive.add(MANIFEST, Buffer.from(`${JSON.stringify(manifest)}\n`));
  return manifest;
}

/** Copies a table out in pieces. Answers how many rows there were. */
async function copyOut(
  client: pg.Client,
  { name, columns }: Table,
  kept: string | undefined,
  add: (name: string, bytes: Buffer) => Promise<void>,
): Promise<number> {
  const from = `SELECT ${columnList(columns)} FROM ${pg.escapeIdentifier(name)}${kept === undefined ? '' : ` WHERE ${kept}`}`;
  const stream = client.query(copyTo(`COPY (${from}) TO STDOUT (FORMAT csv, HEADER)`));
  let pieces: Buffer[] = [];
  let bytes = 0;
  let index = 0;
  const put = async () => {
    index += 1;
    await add(pieceOf(name, index), Buffer.concat(pieces));
    pieces = [];
    bytes = 0;
  };
  for await (const piece of stream) {
    pieces.push(piece as Buffer);
    bytes += (piece as Buffer).length;
    if (bytes >= PIECE_BYTES) await put();
  }
  if (bytes > 0) await put();
  return stream.rowCount;
}

/** The new name itself is on disk only when its folder is; Windows has no such thing. */
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const descriptor = openSync(folder, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
