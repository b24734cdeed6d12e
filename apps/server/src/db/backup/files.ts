// The files that rows name, in the folder beside the database.
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type pg from 'pg';

export const filesFolder = (dataDir: string): string => path.join(dataDir, 'files');

/** What the rows of this snapshot name, as paths within the files folder. */
export async function fileNames(client: pg.Client): Promise<string[]> {
  const { rows: there } = await client.query(`SELECT FROM pg_class WHERE oid = to_regclass('file')`);
  if (there.length === 0) return [];
  const { rows } = await client.query<{ name: string }>('SELECT DISTINCT path AS name FROM file ORDER BY 1');
  return rows.map(({ name }) => name);
}

/** Undefined where it does not lie there. */
export async function readKept(folder: string, relative: string): Promise<Buffer | undefined> {
  try {
    return await readFile(path.join(folder, relative));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

/** Puts a file back; one that lies there already is the same, since its name follows from what it holds. */
export async function putBack(folder: string, relative: string, bytes: Buffer): Promise<void> {
  const file = path.join(folder, relative);
  if (existsSync(file)) return;
  await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
  const part = `${file}.${randomUUID()}.part`;
  await writeFile(part, bytes, { mode: 0o600, flush: true });
  await rename(part, file);
}
