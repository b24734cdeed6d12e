import {
  createDatabase,
  dropDatabase,
  ensureServerLogin,
  hasDatabase,
  renameDatabase,
  waitForDisk,
} from '../db/databases.ts';
import { refuseNursery } from '../db/backup/load.ts';
import { CommandFailure } from './failure.ts';
import { database, unfinished } from './nursery-database.ts';
import type { StopRequest } from './stop-request.ts';

/**
 * Makes the nursery's database on the embedded server from a backup, in place of none or of one without a nursery. It is
 * loaded under another name first, so that what is interrupted leaves everything as it was. Answers what the loading did.
 */
export async function replaceOwnNursery(
  urlOf: (name: string) => string,
  stop: StopRequest,
  load: (ownerUrl: string) => Promise<number>,
): Promise<number> {
  const admin = urlOf('postgres');
  const isThere = await hasDatabase(admin, database);
  if (isThere) await refuseNursery(urlOf(database));
  await dropDatabase(admin, unfinished);
  await createDatabase(admin, unfinished);
  await waitForDisk(admin, unfinished, false);
  const interrupted = stop.asked.then(({ words }): never => {
    throw new CommandFailure(`Ended early: ${words}. Nothing was changed.`);
  });
  // What is asked after the loading no longer interrupts anything.
  interrupted.catch(() => {});
  const code = await Promise.race([load(urlOf(unfinished)), interrupted]);
  await ensureServerLogin(urlOf(unfinished));
  await waitForDisk(admin, unfinished, true);
  if (isThere) await dropDatabase(admin, database);
  await renameDatabase(admin, unfinished, database);
  return code;
}
