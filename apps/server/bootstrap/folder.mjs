// The folder this copy lives in, what was last done to it, and the one process that may change it at a time.
import { createHash } from 'node:crypto';
import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { setTimeout as pause } from 'node:timers/promises';

export const root = fileURLToPath(new URL('../../..', import.meta.url)).replace(/[\\/]$/, '');
// pnpm leaves dot folders inside node_modules alone, and deleting node_modules rightly forgets everything.
const memory = path.join(root, 'node_modules', '.rootclock');

/** Ends the command with a sentence for people instead of a stack trace. */
export function refuse(sentence) {
  throw Object.assign(new Error(sentence), { refusal: true });
}

// Made from other sources, or (migrations) read only when the server starts.
const passedOver = new Set(['node_modules', 'dist', 'generated', 'migrations']);

function filesUnder(relative) {
  const absolute = path.join(root, relative);
  if (!existsSync(absolute)) return [];
  if (statSync(absolute).isFile()) return [relative];
  return readdirSync(absolute, { withFileTypes: true })
    .filter((entry) => !passedOver.has(entry.name))
    .flatMap((entry) => filesUnder(path.join(relative, entry.name)));
}

/** Contents decide, not times: a fresh clone or a branch switch touches every file without changing it. */
export function fingerprint(sources, extra = '') {
  const hash = createHash('sha256').update(extra);
  for (const file of sources.flatMap(filesUnder).sort()) {
    hash.update(`\0${file}\0`).update(readFileSync(path.join(root, file)));
  }
  return hash.digest('hex');
}

export function remembered(step) {
  const file = path.join(memory, `${step}.done`);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

export function remember(step, print) {
  mkdirSync(memory, { recursive: true });
  writeFileSync(path.join(memory, `${step}.done`), print);
}

/** Leaves only the newest few folders of one. */
export function keepNewest(folder, count) {
  const times = readdirSync(folder).map((name) => {
    const each = path.join(folder, name);
    return { each, at: statSync(each).mtimeMs };
  });
  for (const { each } of times.sort((a, b) => b.at - a.at).slice(count)) rmSync(each, { recursive: true, force: true });
}

/** Says so early when the folder cannot be written, for instance after a first start as another user. */
export function mustBeWritable() {
  for (const folder of [root, path.join(root, 'node_modules')].filter((each) => existsSync(each))) {
    try {
      accessSync(folder, constants.W_OK);
    } catch {
      refuse(
        `${folder} belongs to another user (uid ${statSync(folder).uid}) and something in it must be brought up to date. ` +
          'Run this as that user, or give the folder to yourself.',
      );
    }
  }
}

const alive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
};

/** Two commands in one clone take turns at changing it; a lock whose process is gone is swept aside. */
export async function alone(work) {
  mkdirSync(memory, { recursive: true });
  const lock = path.join(memory, 'preparing');
  for (let told = false; ;) {
    try {
      writeFileSync(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const holder = existsSync(lock) ? Number(readFileSync(lock, 'utf8')) : 0;
    if (holder > 0 && !alive(holder)) {
      rmSync(lock, { force: true });
      continue;
    }
    if (!told && holder > 0) console.error(`Waiting for process ${holder}, which is preparing this folder.`);
    told ||= holder > 0;
    await pause(200);
  }
  const release = () => rmSync(lock, { force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    process.off('exit', release);
    release();
  }
}
