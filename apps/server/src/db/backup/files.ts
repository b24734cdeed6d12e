// The files that rows name, in the folder beside the database.
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type pg from 'pg';

/** What the rows name, as paths within the files folder: each content lies once a nursery, under its own hash. */
export async function fileNames(client: pg.Client): Promise<string[]> {
  // A backup from before there were files is taken as well.
  const { rowCount } = await client.query(`SELECT FROM pg_class WHERE oid = to_regclass('file')`);
  if (rowCount === 0) return [];
  const { rows } = await client.query<{ name: string }>(`
    SELECT DISTINCT f.nursery_id || '/' || left(h, 2) || '/' || substr(h, 3) AS name
      FROM file f CROSS JOIN unnest(ARRAY[f.sha256, f.view_sha256, f.thumb_sha256]) h
     WHERE f.emptied_at IS NULL AND h IS NOT NULL ORDER BY 1`);
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
