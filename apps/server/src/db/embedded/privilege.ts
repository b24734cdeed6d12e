// PostgreSQL refuses to run as root, and to run as a user the system has no name for (as some containers do). Both have
// ways round.
import { spawnSync } from 'node:child_process';
import { chownSync, lstatSync, readdirSync } from 'node:fs';
import { userInfo } from 'node:os';
import path from 'node:path';
import { EmbeddedFailure } from './failure.ts';

const NOBODY = 65534;

export interface Privilege {
  kind: 'own user' | 'user namespace' | 'nobody';
  /** Words to put before a program and its arguments. */
  before: string[];
  /** Further options for the spawn. */
  options: { uid?: number; gid?: number; cwd?: string };
  /** Whom the database's files must belong to. */
  owner: number | undefined;
}

const namespace = ['unshare', '--user', `--map-user=${NOBODY}`, `--map-group=${NOBODY}`];
const namespaceWorks = () =>
  spawnSync(namespace[0] as string, [...namespace.slice(1), 'true'], { stdio: 'ignore' }).status === 0;

function hasName(): boolean {
  try {
    return userInfo().username !== '';
  } catch {
    return false;
  }
}

/**
 * A user namespace is preferred: the files stay their owner's and may lie below a folder that only root may enter. Where the
 * system allows none (many containers), root lets the database run as the user "nobody", who must be able to reach the folder.
 */
export function choosePrivilege(): Privilege {
  const uid = process.getuid?.();
  if (uid !== 0 && hasName()) return { kind: 'own user', before: [], options: {}, owner: uid };
  if (namespaceWorks()) return { kind: 'user namespace', before: namespace, options: {}, owner: uid };
  if (uid !== 0) return { kind: 'own user', before: [], options: {}, owner: uid };
  return { kind: 'nobody', before: [], options: { uid: NOBODY, gid: NOBODY, cwd: '/' }, owner: NOBODY };
}

/**
 * Gives a folder and all in it to the user the database will run as. Needed when root changes from one way to the other;
 * a plain user cannot take over another's folder and is told so.
 */
export function claim(folder: string, privilege: Privilege): void {
  const { owner } = privilege;
  if (owner === undefined || lstatSync(folder).uid === owner) return;
  if (process.getuid?.() !== 0) {
    throw new EmbeddedFailure(
      `${folder} belongs to another user (uid ${lstatSync(folder).uid}). Run Rootclock as that user, or set DATA_DIR to a folder of your own.`,
    );
  }
  const give = (entry: string) => {
    chownSync(entry, owner, owner);
    if (lstatSync(entry).isDirectory()) for (const name of readdirSync(entry)) give(path.join(entry, name));
  };
  give(folder);
}
