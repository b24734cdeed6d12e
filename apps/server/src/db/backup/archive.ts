// A backup is one packed tar: other programs can open it, and its pieces are small enough to be held in memory one by one.
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { finished } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import { extract, pack } from 'tar-stream';
import type { Member } from './manifest.ts';

/** Far beyond any piece or picture; a file of somebody else's may hold anything. */
const MOST_BYTES = 256 * 1024 * 1024;

export const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

export interface Writing {
  /** Puts a member at the end. */
  add(name: string, bytes: Buffer): Promise<Member>;
  /** Ends the archive, and waits until all of it is on disk. */
  close(): Promise<void>;
  /** Lets go of the file without finishing it. */
  abandon(): void;
}

/** Begins an archive in a file that must not be there yet, for its owner's eyes only. */
export function writeArchive(file: string, at: Date): Writing {
  const tar = pack();
  const packing = createGzip();
  const out = createWriteStream(file, { flags: 'wx', mode: 0o600, flush: true });
  const written = finished(out);
  const failed = new Promise<never>((_, reject) => {
    tar.on('error', reject);
    packing.on('error', reject);
    out.on('error', reject);
  });
  // Whoever adds next is told; alone it must not end the process.
  failed.catch(() => {});
  written.catch(() => {});
  tar.pipe(packing).pipe(out);
  return {
    async add(name, bytes) {
      const added = new Promise<void>((resolve, reject) => {
        tar.entry({ name, size: bytes.length, mode: 0o600, mtime: at }, bytes, (error) =>
          error ? reject(error) : resolve(),
        );
      });
      await Promise.race([added, failed]);
      return { name, bytes: bytes.length, sha256: sha256(bytes) };
    },
    async close() {
      tar.finalize();
      await Promise.race([written, failed]);
    },
    abandon() {
      for (const part of [tar, packing, out]) part.destroy();
    },
  };
}

/** The members of an archive in order. Throws at the first that is cut off, damaged or no tar at all. */
export async function* readArchive(file: string): AsyncGenerator<{ name: string; bytes: Buffer }> {
  const source = createReadStream(file);
  const unpacking = createGunzip();
  const tar = extract();
  source.on('error', (error) => tar.destroy(error));
  unpacking.on('error', (error) => tar.destroy(error));
  source.pipe(unpacking).pipe(tar);
  try {
    for await (const entry of tar) {
      const { name, size = 0 } = entry.header;
      if (size > MOST_BYTES) throw new Error(`${name} is larger than anything in a backup`);
      const pieces: Buffer[] = [];
      for await (const piece of entry) pieces.push(piece as Buffer);
      yield { name, bytes: Buffer.concat(pieces) };
    }
  } finally {
    for (const part of [source, unpacking, tar]) part.destroy();
  }
}
