// `rootclock backup <file>`: everything in one file, taken in one snapshot beside whoever is at work.
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { filesFolderOf, readConfig, repositoryRoot } from '../config.ts';
import { takeBackup } from '../db/backup/take.ts';
import { CommandFailure } from './failure.ts';
import { withNursery } from './nursery-database.ts';
import { listenForStop } from './stop-request.ts';

const megabytes = (bytes: number) => `${(bytes / 1_000_000).toFixed(1)} MB`;

export const appVersion = (): string =>
  (JSON.parse(readFileSync(path.join(repositoryRoot, 'package.json'), 'utf8')) as { version: string }).version;

export function backup([name]: string[]): Promise<number> {
  if (name === undefined)
    throw new CommandFailure('Say where to: npm run -s rootclock -- backup rootclock-backup.tar.gz');
  const config = readConfig(process.env);
  const file = path.resolve(config.callersFolder, name);
  const broken = new AbortController();
  return withNursery(config, { purpose: 'backup' }, async ({ ownerUrl }) => {
    void listenForStop().asked.then(({ words }) => broken.abort(new CommandFailure(`Ended early: ${words}.`)));
    console.log('Taking a backup. You can go on working.');
    const { tables, members, missingFiles } = await takeBackup({
      ownerUrl,
      file,
      filesFolder: filesFolderOf(config),
      app: appVersion(),
      tell: (line) => console.log(line),
      signal: broken.signal,
    });
    const rows = tables.reduce((sum, table) => sum + table.rows, 0);
    const files = members.filter((member) => member.name.startsWith('files/')).length;
    console.log(
      `Wrote ${file}: ${tables.length} tables, ${rows} rows, ${files} files, ${megabytes(statSync(file).size)}.`,
    );
    if (missingFiles.length === 0) return 0;
    console.error(
      `${missingFiles.length} files are named in the database but missing in the data folder. Everything else is in the backup.`,
    );
    return 1;
  });
}
