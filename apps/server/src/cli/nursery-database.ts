// Finding, starting and preparing the database that the settings name, for the server and for every verb that needs it.
import type { Config } from '../config.ts';
import {
  createDatabase,
  dropDatabase,
  ensureServerLogin,
  hasDatabase,
  renameDatabase,
  serverLogin,
  waitForDisk,
} from '../db/databases.ts';
import { clusterExists, databaseAddress } from '../db/embedded/cluster.ts';
import { holderOf, holdFolder, type FolderLock } from '../db/embedded/folder-lock.ts';
import { startEmbedded } from '../db/embedded.ts';
import { migrate } from '../db/migrate.ts';
import { createClosing, type Closing } from './closing.ts';
import { CommandFailure } from './failure.ts';
import { listenForStop, type StopRequest } from './stop-request.ts';

export interface Addresses {
  /** For the server's pool, which works as a role that owns nothing. */
  url: string;
  /** For migrations, proofs and backups. */
  ownerUrl: string;
}

/** What is done to a database that was just made, before anyone is let in. */
export type FirstFill = (addresses: Addresses) => Promise<void>;

export const database = 'rootclock';
/** Where a nursery is made before it has its name; what an interrupted making left is dropped by the next. */
export const unfinished = 'rootclock_first_start';

/** Starts the embedded database for as long as the command runs, and asks for a stop when it ends by itself. */
export async function startOwnDatabase(
  config: Config,
  lock: FolderLock,
  closing: Closing,
  stop: StopRequest,
): Promise<(name: string) => string> {
  const server = await startEmbedded(config.dataDir);
  closing.add('the database', (withinMs) => server.stop(withinMs), Infinity);
  void server.ended.then(({ asked, words }) => {
    if (asked) return;
    stop.ask({ words: `the database ended by itself; a new start repairs it. It said:\n${words}`, exitCode: 1 });
  });
  lock.announce({ databasePort: server.port });
  return (name) => server.url(name);
}

/**
 * Brings the nursery's database on the embedded server up to date. A first start fills a database under another name and
 * renames it when it is whole, so that one that was interrupted begins anew and never leaves half a nursery.
 */
export async function openOwnNursery(
  urlOf: (name: string) => string,
  stop: StopRequest,
  fill?: FirstFill,
): Promise<Addresses> {
  const admin = urlOf('postgres');
  const open = async (name: string) => {
    const ownerUrl = urlOf(name);
    await migrate(ownerUrl);
    return { ownerUrl, url: await ensureServerLogin(ownerUrl) };
  };
  if (await hasDatabase(admin, database)) return open(database);
  await dropDatabase(admin, unfinished);
  await createDatabase(admin, unfinished);
  await waitForDisk(admin, unfinished, false);
  const addresses = await open(unfinished);
  stop.check();
  if (fill !== undefined) await Promise.race([fill(addresses), stop.asked]);
  stop.check();
  await waitForDisk(admin, unfinished, true);
  await renameDatabase(admin, unfinished, database);
  return open(database);
}

export interface Wanted {
  /** Shown to whoever finds the data folder held meanwhile. */
  purpose: string;
  /** Make the nursery's database with this where there is none, instead of saying so. */
  fill?: FirstFill;
}

/** Gives the work the database: of the given server, the embedded one that runs, or one started just for this. */
export async function withNursery(
  config: Config,
  { purpose, fill }: Wanted,
  work: (addresses: Addresses) => Promise<number>,
): Promise<number> {
  if (config.database.kind === 'given') return work(config.database);
  const { dataDir } = config;
  const holder = holderOf(dataDir);
  if (holder !== undefined) {
    if (holder.databasePort === undefined)
      throw new CommandFailure(
        `Process ${holder.pid} is just starting or stopping on ${dataDir}; try again in a moment.`,
      );
    const ownerUrl = databaseAddress(dataDir, holder.databasePort, database);
    return work({ ownerUrl, url: serverLogin(ownerUrl) });
  }
  const missing = () => new CommandFailure(`There is no nursery in ${dataDir} yet; npm start makes one.`);
  if (fill === undefined && !clusterExists(dataDir)) throw missing();

  // This command's own standard output is its answer, so nothing is said of what is started and stopped for it.
  const closing = createClosing(() => {});
  const stop = listenForStop();
  try {
    const lock = holdFolder(dataDir, purpose);
    closing.add(undefined, () => lock.release());
    const urlOf = await startOwnDatabase(config, lock, closing, stop);
    stop.check();
    if (fill === undefined && !(await hasDatabase(urlOf('postgres'), database))) throw missing();
    const broken = stop.asked.then(({ words }) => Promise.reject(new CommandFailure(`Ended early: ${words}.`)));
    return await Promise.race([openOwnNursery(urlOf, stop, fill).then(work), broken]);
  } finally {
    await closing.all();
  }
}
