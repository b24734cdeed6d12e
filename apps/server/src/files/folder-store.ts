import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat, unlink, utimes } from 'node:fs/promises';
import path from 'node:path';
import type { FileStore } from './file-store.ts';

/** What is not whole yet lies here, beside the nurseries and on the same disk, so that renaming it is one step. */
const UNFINISHED = 'unfinished';
const NURSERY = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const REST = /^[0-9a-f]{62}$/;
const HASH = /^[0-9a-f]{64}$/;

/** Nobody but the account that the server runs as has business in there. */
const OWN_FOLDER = { recursive: true, mode: 0o700 } as const;
const OWN_FILE = 0o600;

const missing = (error: unknown) => (error as NodeJS.ErrnoException).code === 'ENOENT';
const unlessMissing = async <Answer>(work: Promise<Answer>): Promise<Answer | null> => {
  try {
    return await work;
  } catch (error) {
    if (missing(error)) return null;
    throw error;
  }
};
const namesIn = async (folder: string) => ((await unlessMissing(readdir(folder))) ?? []).sort();

async function toDisk(name: string): Promise<void> {
  const handle = await open(name, 'r');
  await handle.sync().finally(() => handle.close());
}

/** A folder as the store: `<nursery>/ab/cdef…`. Processes on one machine may share it. */
export function folderStore(root: string): FileStore {
  const placeOf = (nurseryId: string, sha256: string) => {
    // What is put together to a path here must not lead out of the folder.
    if (!NURSERY.test(nurseryId) || !HASH.test(sha256)) throw new Error('no name of a stored file');
    return path.join(root, nurseryId, sha256.slice(0, 2), sha256.slice(2));
  };

  async function write(place: string, bytes: Uint8Array): Promise<void> {
    const folder = path.dirname(place);
    const draft = path.join(root, UNFINISHED, randomUUID());
    await mkdir(path.dirname(draft), OWN_FOLDER);
    await mkdir(folder, OWN_FOLDER);
    try {
      const handle = await open(draft, 'wx', OWN_FILE);
      try {
        await handle.writeFile(bytes);
        await handle.sync();
      } finally {
        await handle.close();
      }
      await rename(draft, place);
    } catch (error) {
      await rm(draft, { force: true });
      throw error;
    }
    // The names on the way to it are on disk only once their folders are.
    for (const each of [folder, path.dirname(folder), root]) await toDisk(each);
  }

  return {
    async put(nurseryId, bytes) {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      const place = placeOf(nurseryId, sha256);
      const kept = await unlessMissing(stat(place));
      if (kept?.size !== bytes.length) await write(place, bytes);
      else {
        // A sweep leaves alone what was put of late, since the row that will name it is perhaps not committed yet.
        const now = new Date();
        await utimes(place, now, now);
      }
      return sha256;
    },
    read: async (nurseryId, sha256) => unlessMissing(readFile(placeOf(nurseryId, sha256))),
    size: async (nurseryId, sha256) => (await unlessMissing(stat(placeOf(nurseryId, sha256))))?.size ?? null,
    async *list() {
      for (const nurseryId of (await namesIn(root)).filter((name) => NURSERY.test(name)))
        for (const start of await namesIn(path.join(root, nurseryId)))
          for (const rest of (await namesIn(path.join(root, nurseryId, start))).filter((name) => REST.test(name))) {
            const found = await unlessMissing(stat(path.join(root, nurseryId, start, rest)));
            if (found) yield { nurseryId, sha256: start + rest, bytes: found.size, putAt: found.mtime };
          }
    },
    remove: async (nurseryId, sha256) => void (await unlessMissing(unlink(placeOf(nurseryId, sha256)))),
    async clearUnfinished(before) {
      const folder = path.join(root, UNFINISHED);
      for (const name of await namesIn(folder)) {
        const draft = path.join(folder, name);
        const found = await unlessMissing(stat(draft));
        if (found && found.mtime < before) await rm(draft, { force: true });
      }
    },
  };
}
