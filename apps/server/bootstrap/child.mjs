// Runs one tool of the preparation. It is quiet when all goes well and shows everything the tool said when not.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { refuse, root } from './folder.mjs';

const windows = process.platform === 'win32';
const exitCodes = { SIGINT: 130, SIGTERM: 143 };

/**
 * Starts a tool in a process group of its own, so that a signal meant for us can be handed to the tool and everything
 * it started, and nothing goes on installing after npm has ended.
 */
export function start(command, args, { env = {}, stdio }) {
  const child = spawn(command, args, {
    cwd: root,
    stdio,
    env: { ...process.env, ...env },
    detached: !windows,
    // Windows starts .cmd files through a shell alone.
    shell: windows && !command.endsWith('.exe'),
  });
  const pass = (signal) => {
    try {
      if (windows) child.kill(signal);
      else process.kill(-child.pid, signal);
    } catch {
      // It ended between the signal and this line.
    }
    interrupted = signal;
  };
  let interrupted;
  for (const signal of Object.keys(exitCodes)) process.on(signal, pass);
  const ended = new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve(code ?? 1));
  }).finally(() => {
    for (const signal of Object.keys(exitCodes)) process.off(signal, pass);
    if (interrupted) process.exit(exitCodes[interrupted]);
  });
  return { child, ended };
}

/** Runs a tool whose words matter only when it fails. Refuses with `failure` then. */
export async function quietly(command, args, { env, failure }) {
  const { child, ended } = start(command, args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const said = [];
  child.stdout.on('data', (piece) => said.push(piece));
  child.stderr.on('data', (piece) => said.push(piece));
  const code = await ended.catch((error) => {
    said.push(`${error.message}\n`);
    return 1;
  });
  if (code === 0) return;
  process.stderr.write(Buffer.concat(said.map((piece) => Buffer.from(piece))));
  refuse(failure);
}

/** A package's own JavaScript entry run with this very Node: no shell, no PATH, no .cmd files. */
export const nodeTool = (...parts) => [process.execPath, path.join(root, ...parts)];

/** npm as it called us; by name on the PATH where this file was started without npm. */
export function npmCommand() {
  const own = process.env.npm_execpath ?? '';
  return path.basename(own) === 'npm-cli.js' && existsSync(own) ? [process.execPath, own] : ['npm'];
}
