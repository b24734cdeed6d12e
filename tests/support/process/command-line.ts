// One verb of the command line, run as people run it, to its end.
import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';
import { repositoryRoot } from '@rootclock/server/config';
import { inject } from 'vitest';

export interface Ended {
  code: number | null;
  out: string;
  err: string;
}

export async function rootclock(
  args: string[],
  { input = '', env = {} }: { input?: string; env?: Record<string, string> } = {},
): Promise<Ended> {
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...environment } = process.env;
  const child = spawn(process.execPath, [inject('program'), ...args], {
    cwd: repositoryRoot,
    env: { ...environment, ...env },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  child.stdin.end(input);
  const code = new Promise<number | null>((resolve) => child.once('close', resolve));
  const [out, err] = await Promise.all([text(child.stdout), text(child.stderr)]);
  return { code: await code, out, err };
}
