import { statfsSync } from 'node:fs';
import { EmbeddedFailure } from './failure.ts';

const MEGABYTE = 1_000_000;
/** A new cluster with all migrations took 51 MB, 17 of them the log of changes, which grows while a nursery is filled. */
const NEEDED_BYTES = 300 * MEGABYTE;

/** Bytes that whoever runs this may still write where the folder lies. */
export function freeBytesAt(folder: string): number {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
}

const megabytes = (bytes: number) => `${Math.floor(bytes / MEGABYTE)} MB`;

/** Refuses to begin a database where it would not fit: PostgreSQL would stop half way with words that name a file. */
export function requireRoom(dataDir: string, freeBytes: number): void {
  if (freeBytes >= NEEDED_BYTES) return;
  throw new EmbeddedFailure(
    `The disk that holds ${dataDir} is too full: ${megabytes(freeBytes)} are free and ${megabytes(NEEDED_BYTES)} are needed. Free some space, or set DATA_DIR to a folder on another disk.`,
  );
}
