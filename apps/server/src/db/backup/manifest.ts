import * as z from 'zod';
import { BackupFailure } from './failure.ts';

export const FORMAT = 'rootclock-backup';
/** Raised when an older Rootclock could no longer read what is written. */
export const FORMAT_VERSION = 1;
export const MANIFEST = 'manifest.json';

const tableShape = z.strictObject({
  name: z.string(),
  columns: z.array(z.string()),
  rows: z.int().nonnegative(),
  /** Set where not all rows are here, with the reason. */
  leftOut: z.string().optional(),
});

const memberShape = z.strictObject({ name: z.string(), bytes: z.int().nonnegative(), sha256: z.string() });

const manifestShape = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(FORMAT_VERSION),
  app: z.string(),
  postgres: z.string(),
  takenAt: z.iso.datetime(),
  migrations: z.array(z.strictObject({ name: z.string(), checksum: z.string() })),
  tables: z.array(tableShape),
  sequences: z.array(z.strictObject({ name: z.string(), last: z.string().nullable() })),
  /** Files that rows name and that did not lie in the files folder. */
  missingFiles: z.array(z.string()),
  /** All that the backup holds beside this, in order. */
  members: z.array(memberShape),
});

export type Manifest = z.infer<typeof manifestShape>;
export type TableInBackup = z.infer<typeof tableShape>;
export type Member = z.infer<typeof memberShape>;

const anyVersion = z.looseObject({ format: z.literal(FORMAT), version: z.int() });

/** Reads the manifest. Throws BackupFailure for one that a newer Rootclock wrote, and any error for one that is none. */
export function readManifest(bytes: Buffer): Manifest {
  const value: unknown = JSON.parse(bytes.toString('utf8'));
  const { version } = anyVersion.parse(value);
  if (version > FORMAT_VERSION) {
    throw new BackupFailure(
      `This backup has format ${version}; this copy of Rootclock reads up to ${FORMAT_VERSION}. Update Rootclock, then restore again.`,
    );
  }
  return manifestShape.parse(value);
}

const pieceName = /^tables\/([a-z_][a-z0-9_]*)\/\d{5}\.csv$/;
const fileName = /^files\/((?:[A-Za-z0-9_-][A-Za-z0-9._-]*\/)*[A-Za-z0-9_-][A-Za-z0-9._-]*)$/;

export const pieceOf = (table: string, index: number) => `tables/${table}/${String(index).padStart(5, '0')}.csv`;
export const fileMember = (relative: string) => `files/${relative}`;

/** The table that a member is a piece of. */
export const tableOf = (member: string): string | undefined => pieceName.exec(member)?.[1];

/** Where in the files folder a member belongs; names that could lead out of it are none. */
export const relativeFileOf = (member: string): string | undefined => fileName.exec(member)?.[1];
