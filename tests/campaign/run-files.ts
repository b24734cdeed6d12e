// Test files in a process of their own, with a seed and a number of tries that they read from their environment.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';

interface Asked {
  campaign: string;
  seed: number;
  runs: number | undefined;
}

/** Whether all of them passed. A signal meant for us ends them too. */
export async function runFiles(files: string[], { campaign, seed, runs }: Asked): Promise<boolean> {
  const vitest = path.join(repositoryRoot, 'node_modules', 'vitest', 'vitest.mjs');
  const child = spawn(process.execPath, [vitest, 'run', ...files], {
    cwd: repositoryRoot,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: {
      ...process.env,
      ROOTCLOCK_CAMPAIGN: campaign,
      ROOTCLOCK_SEED: String(seed),
      ROOTCLOCK_RUNS: runs === undefined ? '' : String(runs),
    },
  });
  const pass = (signal: NodeJS.Signals) => void child.kill(signal);
  const signals = ['SIGINT', 'SIGTERM'] as const;
  for (const signal of signals) process.on(signal, pass);
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
  for (const signal of signals) process.off(signal, pass);
  return code === 0;
}
