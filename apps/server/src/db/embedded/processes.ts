// Which process is which. A bare pid is not enough: the system gives the same number to another process later.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';

const hasProc = existsSync('/proc/self/stat');

const ps = (pid: number, column: string): string | undefined => {
  if (process.platform === 'win32') return undefined;
  try {
    return (
      execFileSync('ps', ['-o', `${column}=`, '-p', String(pid)], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'ignore'],
      }).trim() || undefined
    );
  } catch {
    return undefined;
  }
};

/** The fields of /proc/<pid>/stat after the program's name, which may itself hold spaces and brackets. */
function procFields(pid: number): string[] | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return text.slice(text.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
  }
}

/** Whether the process exists and has not ended: a zombie only waits to be reaped. */
export function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  if (hasProc) {
    const state = procFields(pid)?.[0];
    return state !== undefined && state !== 'Z' && state !== 'X';
  }
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * A mark that tells this process from an earlier or later one with the same pid: when it started, and since which boot.
 * Undefined where the system does not say (Windows); the pid alone must do there.
 */
export function startMark(pid: number): string | undefined {
  if (!hasProc) return ps(pid, 'lstart');
  const ticks = procFields(pid)?.[19];
  if (ticks === undefined) return undefined;
  return `${ticks}@${readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()}`;
}

/** Whether the process is a PostgreSQL server working on this folder: the only foreign process that is ever stopped. */
export function isPostgresOn(pid: number, dataFolder: string): boolean {
  if (!isAlive(pid)) return false;
  if (!hasProc) {
    const command = ps(pid, 'command') ?? '';
    return /\bpostgres\b/.test(command) && command.includes(dataFolder);
  }
  try {
    const words = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
    const folder = words[words.indexOf('-D') + 1];
    return (
      path.basename(words[0] ?? '') === 'postgres' &&
      folder !== undefined &&
      path.resolve(folder) === path.resolve(dataFolder)
    );
  } catch {
    return false;
  }
}

/**
 * Whether a living process is surely no PostgreSQL server of this folder: another program, or a server that works in another folder. False where
 * the system does not say, since a server that is taken for another one could be joined by a second on the same files.
 */
export function isSurelyOther(pid: number, dataFolder: string): boolean {
  if (!hasProc) {
    const command = ps(pid, 'command');
    return command !== undefined && !/post(gres|master)/.test(command);
  }
  try {
    const program = readFileSync(`/proc/${pid}/comm`, 'utf8').trim();
    // A server works in its data folder, however that was named when it was started.
    return !/^post(gres|master)/.test(program) || realpathSync(`/proc/${pid}/cwd`) !== realpathSync(dataFolder);
  } catch {
    return false;
  }
}
