import { isDeepStrictEqual } from 'node:util';
import { readMigrations, type Migration } from '../migrate.ts';
import { readArchive, sha256 } from './archive.ts';
import { BackupFailure } from './failure.ts';
import { MANIFEST, readManifest, relativeFileOf, tableOf, type Manifest, type Member } from './manifest.ts';

/**
 * Reads a backup from end to end before anything is done with it. Answers its manifest. Throws BackupFailure for what is
 * cut off, altered or no backup.
 */
export async function verifyBackup(file: string): Promise<Manifest> {
  const found: Member[] = [];
  let manifest: Manifest | undefined;
  try {
    for await (const { name, bytes } of readArchive(file)) {
      if (manifest !== undefined) throw new Error(`${name} comes after the end`);
      if (name === MANIFEST) {
        manifest = readManifest(bytes);
        continue;
      }
      if (tableOf(name) === undefined && relativeFileOf(name) === undefined) throw new Error(`it holds ${name}`);
      found.push({ name, bytes: bytes.length, sha256: sha256(bytes) });
    }
    if (manifest === undefined) throw new Error('it has no manifest');
    if (!isDeepStrictEqual(found, manifest.members)) throw new Error('it does not hold what its manifest lists');
  } catch (error) {
    if (error instanceof BackupFailure) throw error;
    throw new BackupFailure(
      `${file} is damaged, or is no backup of Rootclock: ${(error as Error).message}. Nothing was changed. Try another backup.`,
      { cause: error },
    );
  }
  return manifest;
}

/** The migrations that a database must have for this backup to fit it. Throws BackupFailure where this copy has not all of them. */
export function migrationsFor({ migrations }: Manifest, own = readMigrations()): Migration[] {
  const known = new Map(own.map((migration) => [migration.name, migration]));
  for (const { name, checksum } of migrations) {
    const migration = known.get(name);
    if (migration === undefined) {
      throw new BackupFailure(
        `This backup is from a newer Rootclock: it has the migration ${name}. Update Rootclock, then restore again. Nothing was changed.`,
      );
    }
    if (migration.checksum !== checksum) {
      throw new BackupFailure(
        `The migration ${name} has another text here than in the backup. Restore with the copy of Rootclock that took it. Nothing was changed.`,
      );
    }
  }
  const wanted = new Set(migrations.map(({ name }) => name));
  return own.filter(({ name }) => wanted.has(name));
}
