// Starts everything in order, waits, and stops everything in the opposite order.
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { createApp } from '../app.ts';
import { filesFolderOf, placeOf, readConfig, repositoryRoot, type Config } from '../config.ts';
import { holdFolder } from '../db/embedded/folder-lock.ts';
import { migrate } from '../db/migrate.ts';
import { solver } from '../features/promises/solving/solver.ts';
import { planner } from '../features/planning/plan/solver/planner.ts';
import { createClosing, type Closing } from './closing.ts';
import { greeting } from './greeting.ts';
import { addressesOf, mustBeFree, portTaken } from './listening.ts';
import { fillWithDemo, isEmpty } from './demo.ts';
import { openOwnNursery, startOwnDatabase, type Addresses } from './nursery-database.ts';
import { listenForStop, Stopped, type StopRequest } from './stop-request.ts';

/** For what was written to a pipe to be read to its end. */
const LETTING_GO_MS = 500;

const say = (line: string) => console.log(line);

/** Serves until asked to stop. Answers 0 when a signal asked, 1 when the database ended by itself. Throws when the start fails. */
export async function serve(): Promise<number> {
  const config = readConfig(process.env);
  const stop = listenForStop();
  const closing = createClosing(say);
  try {
    await startUntilAsked(config, closing, stop);
    const { words, exitCode } = await stop.asked;
    say(`Stopping: ${words}.`);
    return exitCode;
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    say(`Stopping before the start was complete: ${error.message}.`);
    return (await stop.asked).exitCode;
  } finally {
    await closing.all();
    // A database that says nothing still holds lines that do not end by themselves.
    setTimeout(() => process.exit(), LETTING_GO_MS).unref();
  }
}

/** A given database may keep a start waiting for ever, so that is not waited for; an embedded one has to be up before it can be stopped. */
async function startUntilAsked(config: Config, closing: Closing, stop: StopRequest): Promise<void> {
  const started = start(config, closing, stop);
  if (config.database.kind === 'embedded') return started;
  started.catch(() => {});
  await Promise.race([started, stop.asked]);
}

async function start(config: Config, closing: Closing, stop: StopRequest): Promise<void> {
  const announce = config.database.kind === 'embedded' ? takeFolder(config, closing) : undefined;
  // Looked at before the database starts, so that a busy port costs nothing and leaves nothing behind.
  await mustBeFree(config);
  stop.check();

  const addresses =
    announce === undefined ? await openGiven(config) : await openEmbedded(config, announce, closing, stop);
  stop.check();

  const webRoot = path.join(repositoryRoot, 'apps', 'web', 'dist');
  const { publicUrl, trustedProxies } = config;
  const app = await createApp({
    databaseUrl: addresses.url,
    webRoot,
    filesFolder: filesFolderOf(config),
    log: { level: 'warn' },
    publicUrl,
    trustedProxies,
    rollsDays: true,
  });
  closing.add('the server', () => app.close());
  await app.listen({ port: config.port, host: config.host }).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'EADDRINUSE' ? portTaken(config) : error;
  });
  stop.check();

  const reachable = addressesOf(config, (app.server.address() as AddressInfo).port);
  announce?.announce({ address: reachable[0] as string });
  closing.add(undefined, () => planner.stop());
  closing.add(undefined, () => solver.stop());
  for (const line of await greeting(addresses.url, reachable)) say(line);
}

function takeFolder(config: Config, closing: Closing) {
  const lock = holdFolder(config.dataDir, 'serve');
  closing.add(undefined, () => lock.release());
  return lock;
}

async function openEmbedded(
  config: Config,
  lock: ReturnType<typeof takeFolder>,
  closing: Closing,
  stop: StopRequest,
): Promise<Addresses> {
  const urlOf = await startOwnDatabase(config, lock, closing, stop);
  stop.check();
  return openOwnNursery(urlOf, stop, config.demo ? fillWithDemo : undefined);
}

async function openGiven({ database, demo }: Config): Promise<Addresses> {
  if (database.kind !== 'given') throw new Error('no database was given');
  say(`Using the PostgreSQL server at ${placeOf(database.url)}.`);
  await migrate(database.ownerUrl);
  if (demo && (await isEmpty(database.url))) await fillWithDemo(database);
  return database;
}
