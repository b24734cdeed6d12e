// One process at a time works on a data folder. The lock is a file that names its holder, so that a second start can say
// who holds the folder, and so that a holder that was killed is told apart from one that lives.
import { randomUUID } from 'node:crypto';
import { accessSync, constants, linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import * as z from 'zod';
import { EmbeddedFailure } from './failure.ts';
import { isAlive, startMark } from './processes.ts';

const holderShape = z.object({
  id: z.string(),
  pid: z.number().int().positive(),
  /** Tells the holder from another process that later got the same pid. */
  mark: z.string().optional(),
  since: z.string(),
  purpose: z.string(),
  /** Where people reach the server, once it listens. */
  address: z.string().optional(),
  /** Where the embedded database listens, once it does. */
  databasePort: z.number().int().optional(),
});

export type Holder = z.infer<typeof holderShape>;

export interface FolderLock {
  /** Adds what only became known after the folder was taken. */
  announce(facts: Pick<Holder, 'address' | 'databasePort'>): void;
  release(): void;
}

/** The folder is in use. Its message names the process, since when, and its address. */
export class FolderHeldError extends Error {
  override name = 'FolderHeldError';
  constructor(
    readonly dataDir: string,
    readonly holder: Holder,
  ) {
    const since = holder.since.replace('T', ' ').replace(/:\d\d\.\d+Z$/, ' UTC');
    const where = holder.address === undefined ? '' : ` and answers at ${holder.address}`;
    super(
      `The data folder ${dataDir} is held by process ${holder.pid}, which has run "${holder.purpose}" since ${since}${where}. ` +
        'Stop that process first, or set DATA_DIR to another folder.',
    );
  }
}

const lockFile = (dataDir: string) => path.join(dataDir, 'rootclock.lock');

function read(file: string): Holder | undefined {
  try {
    return holderShape.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    // Absent, or not a lock of ours: files are linked in place whole, so a half-written one cannot be met.
    return undefined;
  }
}

const lives = (holder: Holder) => isAlive(holder.pid) && startMark(holder.pid) === holder.mark;

/** The living process that holds the folder, if there is one. */
export function holderOf(dataDir: string): Holder | undefined {
  const holder = read(lockFile(dataDir));
  return holder !== undefined && lives(holder) ? holder : undefined;
}

/** Puts the lock in place in one step, content and all. False when a lock is already there. */
function place(dataDir: string, holder: Holder): boolean {
  const draft = `${lockFile(dataDir)}.${holder.id}`;
  writeFileSync(draft, JSON.stringify(holder));
  try {
    linkSync(draft, lockFile(dataDir));
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

/**
 * Takes away the lock of a process that is gone. Between reading and removing, another start may already have put its own
 * lock there: what was moved aside is read again, and put back when it is not the dead one.
 */
function sweep(dataDir: string, dead: Holder | undefined): void {
  const aside = `${lockFile(dataDir)}.${randomUUID()}`;
  try {
    renameSync(lockFile(dataDir), aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  const moved = read(aside);
  if (moved !== undefined && moved.id !== dead?.id) linkSync(aside, lockFile(dataDir));
  rmSync(aside, { force: true });
}

function ensureOwnFolder(dataDir: string): void {
  try {
    mkdirSync(dataDir, { recursive: true });
    accessSync(dataDir, constants.W_OK);
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new EmbeddedFailure(
      `The data folder ${dataDir} cannot be written (${reason}). Run Rootclock as its owner, or set DATA_DIR to a folder of your own.`,
      {
        cause: error,
      },
    );
  }
}

/** Takes the data folder for this process, making it if need be. Throws FolderHeldError when another process has it. */
export function holdFolder(dataDir: string, purpose: string): FolderLock {
  ensureOwnFolder(dataDir);
  const mark = startMark(process.pid);
  let mine: Holder = {
    id: randomUUID(),
    pid: process.pid,
    ...(mark === undefined ? {} : { mark }),
    since: new Date().toISOString(),
    purpose,
  };
  while (!place(dataDir, mine)) {
    const holder = read(lockFile(dataDir));
    if (holder !== undefined && lives(holder)) throw new FolderHeldError(dataDir, holder);
    sweep(dataDir, holder);
  }
  const isMine = () => read(lockFile(dataDir))?.id === mine.id;
  return {
    announce(facts) {
      if (!isMine()) return;
      mine = { ...mine, ...facts };
      const draft = `${lockFile(dataDir)}.${mine.id}`;
      writeFileSync(draft, JSON.stringify(mine));
      renameSync(draft, lockFile(dataDir));
    },
    release() {
      if (isMine()) rmSync(lockFile(dataDir), { force: true });
    },
  };
}
