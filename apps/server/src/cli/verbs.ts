// The command line: one word, one file. A verb is loaded only when asked for, so that `allocate` need not load a server.
import { ConfigError } from '../config.ts';
import { BackupFailure } from '../db/backup/failure.ts';
import { EmbeddedFailure } from '../db/embedded/failure.ts';
import { FolderHeldError } from '../db/embedded/folder-lock.ts';
import { MigrationError } from '../db/migrate.ts';
import { CommandFailure } from './failure.ts';

interface Verb {
  about: string;
  /** Answers the exit code. */
  load(): Promise<(args: string[]) => Promise<number>>;
}

const verbs: Record<string, Verb> = {
  serve: { about: 'start the server (the same as npm start)', load: async () => (await import('./serve.ts')).serve },
  demo: {
    about: 'fill a database that has no nursery yet with the demo nursery',
    load: async () => (await import('./demo.ts')).demo,
  },
  check: {
    about:
      'prove all data laws over the database and its files (--rehash reads each file whole); exits 1 and names what broke',
    load: async () => (await import('./check.ts')).check,
  },
  backup: {
    about: 'write everything into one file, beside a running server: backup <file>',
    load: async () => (await import('./backup.ts')).backup,
  },
  restore: {
    about: 'bring a backup into a new data folder or an empty database: restore <file>',
    load: async () => (await import('./restore.ts')).restore,
  },
  allocate: {
    about: 'read an allocation instance as JSON on standard input, write the answer as JSON',
    load: async () => (await import('./allocate.ts')).allocate,
  },
  'rebuild-evidence': {
    about: 'work out anew what every batch tells of how it went',
    load: async () => (await import('./rebuild-evidence.ts')).rebuildEvidence,
  },
  'remove-second-step': {
    about: 'let somebody whose phone is lost sign in with the password alone: remove-second-step <email>',
    load: async () => (await import('./remove-second-step.ts')).removeSecondStep,
  },
  schema: {
    about: 'for developers: write prisma/*.prisma anew from the migrations',
    load: async () => (await import('./schema.ts')).schema,
  },
};

const usage = () =>
  [
    'Usage: npm run -s rootclock -- <verb>',
    '',
    ...Object.entries(verbs).map(([name, { about }]) => `  ${name.padEnd(20)} ${about}`),
  ].join('\n');

/** Failures that a person can act on are shown as their sentence; anything else is a fault of ours and needs its stack. */
const expected = [ConfigError, EmbeddedFailure, FolderHeldError, MigrationError, BackupFailure, CommandFailure];

/** Runs the verb and answers the exit code: 0 done, 1 failed, 2 not understood. */
export async function runVerb([name, ...args]: string[]): Promise<number> {
  const verb = name !== undefined && Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (verb === undefined) {
    console.error(name === undefined ? usage() : `There is no verb "${name}".\n\n${usage()}`);
    return 2;
  }
  try {
    const run = await verb.load();
    return await run(args);
  } catch (error) {
    console.error(expected.some((kind) => error instanceof kind) ? `Rootclock: ${(error as Error).message}` : error);
    return 1;
  }
}
