// `rootclock restore <file>`: a backup into a data folder or database that has no nursery yet.
import path from 'node:path';
import { filesFolderOf, readConfig, type Config } from '../config.ts';
import { loadBackup } from '../db/backup/load.ts';
import type { Manifest } from '../db/backup/manifest.ts';
import { migrationsFor, verifyBackup } from '../db/backup/verify.ts';
import { holdFolder } from '../db/embedded/folder-lock.ts';
import { folderStore } from '../files/folder-store.ts';
import { tellLaws } from './check.ts';
import { createClosing } from './closing.ts';
import { CommandFailure } from './failure.ts';
import { startOwnDatabase } from './nursery-database.ts';
import { replaceOwnNursery } from './replacing.ts';
import { listenForStop } from './stop-request.ts';

export async function restore([name]: string[]): Promise<number> {
  if (name === undefined)
    throw new CommandFailure('Say from where: npm run -s rootclock -- restore rootclock-backup.tar.gz');
  const config = readConfig(process.env);
  const file = path.resolve(config.callersFolder, name);
  const manifest = await verifyBackup(file);
  migrationsFor(manifest);
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(`The backup is whole: taken ${manifest.takenAt}, ${manifest.tables.length} tables, ${rows} rows.`);
  const load = async (ownerUrl: string): Promise<number> => {
    const filesFolder = filesFolderOf(config);
    await loadBackup({ ownerUrl, file, manifest, filesFolder });
    console.log('Everything is loaded. Checking it against all laws.');
    return tellLaws(ownerUrl, { files: folderStore(filesFolder), rehash: true, now: new Date() });
  };
  const code = config.database.kind === 'given' ? await load(config.database.ownerUrl) : await intoOwn(config, load);
  tellEnd(manifest, code);
  return code;
}

function tellEnd({ missingFiles }: Manifest, code: number): void {
  if (missingFiles.length > 0) console.error(`${missingFiles.length} files were missing when the backup was taken.`);
  if (code === 0) console.log('Restored. Everybody signs in anew.');
  else console.error('Everything in the backup was restored, but it breaks laws: see above.');
}

async function intoOwn(config: Config, load: (ownerUrl: string) => Promise<number>): Promise<number> {
  const closing = createClosing(() => {});
  const stop = listenForStop();
  try {
    const lock = holdFolder(config.dataDir, 'restore');
    closing.add(undefined, () => lock.release());
    const urlOf = await startOwnDatabase(config, lock, closing, stop);
    stop.check();
    return await replaceOwnNursery(urlOf, stop, load);
  } finally {
    await closing.all();
  }
}
