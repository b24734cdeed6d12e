// When node is killed outright, its database goes on alone. The next start stops that one first, and only that one.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { EmbeddedFailure } from './failure.ts';
import { isAlive, isPostgresOn, isSurelyOther } from './processes.ts';

async function gone(pid: number, withinMs: number): Promise<boolean> {
  for (const until = Date.now() + withinMs; Date.now() < until; await pause(20)) if (!isAlive(pid)) return true;
  return !isAlive(pid);
}

/** Asks a database process to stop: politely (open work is rolled back), then at once (it repairs itself at the next start). */
export async function stopPostgres(pid: number, withinMs = 25_000): Promise<void> {
  for (const [signal, share] of [
    ['SIGINT', 0.6],
    ['SIGQUIT', 0.2],
    ['SIGKILL', 0.2],
  ] as const) {
    const patienceMs = withinMs * share;
    try {
      process.kill(pid, signal);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ESRCH') return;
      throw error;
    }
    if (await gone(pid, patienceMs)) return;
  }
  throw new EmbeddedFailure(`The database process ${pid} does not stop.`);
}

/** The number of no process, on any system: PostgreSQL takes a file that names it for one of a server that is gone. */
const NOBODY = 2_147_483_647;

/** A process that is ending says for a moment neither that it is gone nor which program it is. */
const DOUBT_MS = 5_000;

/**
 * Stops a server that was left behind on this cluster folder. A process that merely has the noted pid is not touched; since PostgreSQL would take
 * it for the server and not start, and one that ended without its parent taking notice as well, the file names nobody then. The rest of the file
 * stays, by which PostgreSQL itself makes sure that no child of a server that was killed still works on the files.
 */
export async function stopOrphan(folder: string): Promise<void> {
  const file = path.join(folder, 'postmaster.pid');
  let noted: string;
  try {
    noted = readFileSync(file, 'utf8');
  } catch {
    return;
  }
  const pid = Number(noted.split('\n')[0]);
  for (const until = Date.now() + DOUBT_MS; Date.now() < until; await pause(50)) {
    if (isPostgresOn(pid, folder)) return stopPostgres(pid);
    if (isAlive(pid) && !isSurelyOther(pid, folder)) continue;
    writeFileSync(file, noted.replace(/^\d+/, String(NOBODY)));
    return;
  }
}
