// The embedded PostgreSQL: an ordinary server from the packages, run on a folder of ours, reached over loopback only.
import { spawn, type ChildProcess } from 'node:child_process';
import { closeSync, fchownSync, openSync, readFileSync, renameSync, statSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { findBinaries } from './embedded/binaries.ts';
import { clusterFolder, databaseAddress, ensureCluster } from './embedded/cluster.ts';
import { EmbeddedFailure } from './embedded/failure.ts';
import { stopOrphan, stopPostgres } from './embedded/orphan.ts';
import { choosePrivilege, type Privilege } from './embedded/privilege.ts';

export interface EmbeddedServer {
  port: number;
  /** The process that serves; children of it serve the single connections. */
  pid: number;
  privilege: Privilege['kind'];
  /** The address of one of its databases, password included: never print it. */
  url(database: string): string;
  /** Settles when the server has ended, asked to or not. `asked` tells which. */
  ended: Promise<{ asked: boolean; words: string }>;
  /** Stops it, politely first; when time is short, at once. */
  stop(withinMs?: number): Promise<void>;
}

export interface EmbeddedOptions {
  /** False trades safety against power loss for speed; only tests want that. */
  durable?: boolean;
  /** How much can still be written at a folder; tests fill the disk by it. */
  freeBytes?: (folder: string) => number;
}

const logFile = (dataDir: string) => path.join(dataDir, 'postgres.log');
const logLimitBytes = 5_000_000;

/** How long a server may take to repair itself after a crash before we call the start failed. */
const startPatienceMs = 120_000;
/** Reasons that pass by themselves: another process took the port, or children of a killed server are still leaving. */
const passing = /could not bind|Address already in use|pre-existing shared memory block|is still in use/;

const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });

/** Opens the server's own log for appending and starts a fresh one when it has grown large. */
function openLog(dataDir: string, privilege: Privilege): { descriptor: number; from: number } {
  const file = logFile(dataDir);
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size > logLimitBytes) renameSync(file, `${file}.old`);
  const descriptor = openSync(file, 'a', 0o600);
  if (privilege.options.uid !== undefined) fchownSync(descriptor, privilege.options.uid, privilege.options.uid);
  return { descriptor, from: size > logLimitBytes ? 0 : size };
}

const readyLine = (folder: string, pid: number): boolean => {
  try {
    const lines = readFileSync(path.join(folder, 'postmaster.pid'), 'utf8').split('\n');
    return Number(lines[0]) === pid && lines[7]?.trim() === 'ready';
  } catch {
    return false;
  }
};

interface Attempt {
  child: ChildProcess;
  port: number;
  exited: Promise<void>;
  /** What the server wrote to its log since this attempt began, its last lines. */
  words(): string;
}

async function launch(dataDir: string, postgres: string, privilege: Privilege, durable: boolean): Promise<Attempt> {
  const port = await freePort();
  const settings = [
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    'max_connections=200',
    'timezone=UTC',
    'log_timezone=UTC',
    // Compiling a plan costs more than it saves on the small queries of a nursery.
    'jit=off',
    ...(durable ? [] : ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off']),
  ];
  const [program, ...args] = [...privilege.before, postgres, '-D', clusterFolder(dataDir), '-p', String(port)];
  const { descriptor, from } = openLog(dataDir, privilege);
  // Detached: Ctrl-C then reaches only node, which stops the database after its own work is done.
  const child = spawn(program as string, [...args, ...settings.flatMap((setting) => ['-c', setting])], {
    ...privilege.options,
    detached: true,
    stdio: ['ignore', descriptor, descriptor],
  });
  closeSync(descriptor);
  const exited = new Promise<void>((resolve) => {
    child.once('exit', () => resolve());
    child.once('error', () => resolve());
  });
  const words = () =>
    readFileSync(logFile(dataDir)).subarray(from).toString('utf8').trimEnd().split('\n').slice(-8).join('\n');
  return { child, port, exited, words };
}

const hasEnded = (child: ChildProcess) =>
  child.pid === undefined || child.exitCode !== null || child.signalCode !== null;

/**
 * Starts the embedded server on a data folder, making the cluster on the first start and clearing away what a killed start
 * left. The caller holds the folder (see folder-lock). Throws with the server's own words when it does not come up; nothing
 * is left running then.
 */
export async function startEmbedded(
  dataDir: string,
  { durable = true, freeBytes }: EmbeddedOptions = {},
): Promise<EmbeddedServer> {
  const { initdb, postgres } = await findBinaries();
  const privilege = choosePrivilege();
  const folder = clusterFolder(dataDir);
  ensureCluster(dataDir, { initdb, postgres }, privilege, durable, freeBytes);
  await stopOrphan(folder);

  const giveUpAt = Date.now() + startPatienceMs;
  for (;;) {
    const attempt = await launch(dataDir, postgres, privilege, durable);
    const { child } = attempt;
    while (!hasEnded(child) && !readyLine(folder, child.pid as number) && Date.now() < giveUpAt) await pause(20);
    if (!hasEnded(child) && Date.now() < giveUpAt) return running(dataDir, attempt, privilege);
    if (!hasEnded(child)) await stopPostgres(child.pid as number);
    const words = attempt.words();
    if (Date.now() >= giveUpAt || !passing.test(words)) {
      throw new EmbeddedFailure(`The embedded database in ${folder} did not start. It said:\n${words || '(nothing)'}`);
    }
    await pause(200);
  }
}

function running(dataDir: string, { child, port, exited, words }: Attempt, privilege: Privilege): EmbeddedServer {
  const pid = child.pid as number;
  let asked = false;
  return {
    port,
    pid,
    privilege: privilege.kind,
    url: (database) => databaseAddress(dataDir, port, database),
    ended: exited.then(() => ({ asked, words: words() })),
    async stop(withinMs) {
      asked = true;
      if (!hasEnded(child)) await stopPostgres(pid, withinMs);
      await exited;
    },
  };
}
