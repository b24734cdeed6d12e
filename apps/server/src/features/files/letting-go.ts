import { lockNursery } from '../../db/nursery-row.ts';
import type { Database } from '../../db/pool.ts';
import type { LetGo } from '../../db/runner.ts';
import type { FileStore } from '../../files/file-store.ts';
import { hashesNeeded } from './store.ts';

interface Parts {
  database: Database;
  files: FileStore;
}

/**
 * Takes out of the store what no row of a nursery counts on. It holds the nursery's lock meanwhile, so that nothing that is being added leans on
 * what goes. Of a nursery that is not in this database nothing is taken: another database may share the folder.
 */
export const lettingGo =
  ({ database, files }: Parts): LetGo =>
  (nurseryId, hashes) =>
    database.transaction(async (tx) => {
      if (!(await lockNursery(tx, nurseryId))) return;
      const needed = await hashesNeeded(tx, nurseryId, hashes);
      for (const hash of hashes.filter((each) => !needed.has(each))) await files.remove(nurseryId, hash);
    });

/** Until then what lies in the store may belong to an entry that is still on its way to its commit. */
export const SETTLED_AFTER_MS = 24 * 60 * 60 * 1000;
const AT_ONCE = 200;

/** Takes out of the store what a crash has left there: what was never named by a row, and what was blanked. */
export async function sweepFiles(parts: Parts, now: Date): Promise<void> {
  const before = new Date(now.getTime() - SETTLED_AFTER_MS);
  const letGo = lettingGo(parts);
  await parts.files.clearUnfinished(before);
  let nurseryId = '';
  let hashes: string[] = [];
  const flush = async () => {
    if (hashes.length > 0) await letGo(nurseryId, hashes);
    hashes = [];
  };
  for await (const file of parts.files.list()) {
    if (file.nurseryId !== nurseryId || hashes.length >= AT_ONCE) await flush();
    nurseryId = file.nurseryId;
    if (file.putAt < before) hashes.push(file.sha256);
  }
  await flush();
}
