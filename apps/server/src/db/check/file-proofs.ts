import { createHash } from 'node:crypto';
import type pg from 'pg';
import type { FileStore } from '../../files/file-store.ts';
import type { Proofs } from './ledger-proofs.ts';

/** What can be told from the rows alone. */
export const fileProofs: Proofs = {
  'files-are-kept': `
    SELECT a.nursery_id AS nursery, format('attachment %s shows %s, which was emptied', a.id, f.sha256) AS what
      FROM attachment a JOIN file f ON f.nursery_id = a.nursery_id AND f.id = a.file_id
     WHERE a.blanked_at IS NULL AND f.emptied_at IS NOT NULL
    UNION ALL
    SELECT f.nursery_id, format('file %s is kept although all that showed it was blanked', f.sha256) FROM file f
     WHERE f.emptied_at IS NULL
       AND NOT EXISTS (SELECT FROM attachment a WHERE a.nursery_id = f.nursery_id AND a.file_id = f.id AND a.blanked_at IS NULL)`,
};

export interface StoreToProve {
  files: FileStore;
  /** Reads each file to its end and holds it against its hash, instead of its length alone. */
  rehash: boolean;
  now: Date;
}

export interface StoreReport {
  breaches: { nursery: string; what: string }[];
  looked: number;
  /** What lies in the store and no row counts on: no law is broken by it, and the server's daily sweep takes it out. */
  orphans: { nursery: string; sha256: string }[];
}

/** A command puts its file a few seconds before its row is committed. */
const ON_ITS_WAY_MS = 60_000;

interface Part {
  nursery: string;
  sha256: string;
  bytes: number;
}

const PARTS = `
  SELECT f.nursery_id::text AS nursery, p.sha256, p.bytes FROM file f
   CROSS JOIN LATERAL (VALUES (f.sha256, f.bytes), (f.view_sha256, f.view_bytes), (f.thumb_sha256, f.thumb_bytes)) p (sha256, bytes)
   WHERE f.emptied_at IS NULL AND p.sha256 IS NOT NULL`;

/** Holds the store against the rows, beside a running server: what changes meanwhile is looked at once more before anything is said of it. */
export async function proveStore(client: pg.Client, { files, rehash, now }: StoreToProve): Promise<StoreReport> {
  const { rows: parts } = await client.query<Part>(`${PARTS} ORDER BY 1, 2`);
  const breaches: StoreReport['breaches'] = [];
  for (const part of parts) {
    const fault = await faultOf(files, part, rehash);
    if (fault !== null && (await isStillNamed(client, part)))
      breaches.push({ nursery: part.nursery, what: `${part.sha256} ${fault}` });
  }
  return { breaches, looked: parts.length, orphans: await orphansIn(client, files, now) };
}

async function faultOf(files: FileStore, { nursery, sha256, bytes }: Part, rehash: boolean): Promise<string | null> {
  const size = await files.size(nursery, sha256);
  if (size === null) return 'is not in the store';
  if (size !== bytes) return `has ${size} bytes in the store, and its row says ${bytes}`;
  if (!rehash) return null;
  const kept = await files.read(nursery, sha256);
  const hash = createHash('sha256')
    .update(kept ?? '')
    .digest('hex');
  return hash === sha256 ? null : 'holds something else than its name says';
}

async function isStillNamed(client: pg.Client, { nursery, sha256 }: Part): Promise<boolean> {
  const { rowCount } = await client.query(`SELECT FROM (${PARTS}) p WHERE p.nursery = $1 AND p.sha256 = $2`, [
    nursery,
    sha256,
  ]);
  return rowCount !== 0;
}

async function orphansIn(client: pg.Client, files: FileStore, now: Date): Promise<StoreReport['orphans']> {
  const settled = now.getTime() - ON_ITS_WAY_MS;
  const found: StoreReport['orphans'] = [];
  for await (const { nurseryId: nursery, sha256, putAt } of files.list())
    if (putAt.getTime() < settled) found.push({ nursery, sha256 });
  // Asked after the listing: what was put before it has its row by now.
  const { rows } = await client.query<Part>(PARTS);
  const named = new Set(rows.map((part) => `${part.nursery}/${part.sha256}`));
  return found.filter((each) => !named.has(`${each.nursery}/${each.sha256}`));
}
