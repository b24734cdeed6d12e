// The server as people run it: a process of its own, with its own data folder, watched from outside.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { repositoryRoot } from '@rootclock/server/config';
import { inject } from 'vitest';

export interface ServerProcess {
  pid: number;
  /** Where it answers; rejects with what it said when it ends before it is ready. */
  address: Promise<string>;
  /** Settles when the process has ended. */
  ended: Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
  /** All it has said so far, on both outputs. */
  words(): string;
  signal(name: NodeJS.Signals): void;
}

export interface ServerSettings {
  DATA_DIR: string;
  PORT?: string;
  DATABASE_URL?: string;
  DATABASE_OWNER_URL?: string;
  ROOTCLOCK_DEMO?: 'on' | 'off';
}

const running = new Set<ServerProcess>();

/** Starts a server on a free port, without the demo unless asked for. */
export function startServer(settings: ServerSettings, verb = 'serve'): ServerProcess {
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...environment } = process.env;
  const child = spawn(process.execPath, [inject('program'), verb], {
    cwd: repositoryRoot,
    env: { ...environment, PORT: '0', ROOTCLOCK_DEMO: 'off', ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const heard = new Set<() => void>();
  for (const output of [child.stdout, child.stderr]) {
    output.setEncoding('utf8').on('data', (words: string) => {
      said += words;
      for (const listener of heard) listener();
    });
  }
  const ended = new Promise<{ code: number | null; signal: NodeJS.Signals | null }>((resolve) => {
    child.once('close', (code, signal) => resolve({ code, signal }));
  });
  const address = new Promise<string>((resolve, reject) => {
    heard.add(() => {
      const found = /ready at (http:\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    void ended.then(({ code }) => reject(new Error(`the server ended with ${code} before it was ready:\n${said}`)));
  });
  // Tests of a start that fails never ask for the address; that alone is no fault.
  address.catch(() => {});
  const server: ServerProcess = {
    pid: child.pid as number,
    address,
    ended,
    words: () => said,
    signal: (name) => void child.kill(name),
  };
  running.add(server);
  void ended.then(() => running.delete(server));
  return server;
}

/** Ends whatever a failed test left running, and waits for it. */
export async function endAllServers(): Promise<void> {
  for (const server of running) server.signal('SIGTERM');
  await Promise.all([...running].map((server) => server.ended));
}

/** The command lines of all processes that name this folder; databases of ours always do. */
export function processesOn(folder: string): string[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      try {
        const words = readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
        return words.includes(folder) ? [words] : [];
      } catch {
        return []; // It ended while the list was read.
      }
    });
}
