// What `npm start` does when nothing changed since the last time: no TypeScript is read, and little of anything else.
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { repositoryRoot } from '@rootclock/server/config';
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest';
import { largeScope } from '../support/large-scope.ts';
import { planReservations } from '../../apps/server/src/features/promises/allocation/plan.ts';
import { ask, command, must } from '../support/process/http-nursery.ts';
import { endAllServers, startServer } from '../support/process/server-process.ts';

/** Far above the 22 of the day this was written. */
const MOST_MODULES = 80;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'rootclock warm '));
});
afterEach(async () => {
  await endAllServers();
  rmSync(folder, { recursive: true, force: true });
});

const runFile = (root: string) => path.join(root, 'apps/server/bootstrap/run.mjs');

/** Starts as npm does, stops once it is ready, and answers which modules were read. */
async function modulesOfStart(): Promise<string[]> {
  const coverage = path.join(folder, 'modules');
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...environment } = process.env;
  const child = spawn(process.execPath, [runFile(repositoryRoot), 'start'], {
    env: {
      ...environment,
      DATA_DIR: path.join(folder, 'data'),
      PORT: '0',
      ROOTCLOCK_DEMO: 'off',
      NODE_V8_COVERAGE: coverage,
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const closed = new Promise((resolve) => child.once('close', resolve));
  child.stdout.setEncoding('utf8').on('data', (words: string) => {
    if (words.includes('ready at')) child.kill('SIGTERM');
  });
  await closed;
  return readdirSync(coverage)
    .flatMap(
      (file) => (JSON.parse(readFileSync(path.join(coverage, file), 'utf8')) as { result: { url: string }[] }).result,
    )
    .map(({ url }) => url)
    .filter((url) => url.startsWith('file:'));
}

describe('a warm start', () => {
  test('reads few modules, none of them TypeScript or what translates it', async () => {
    execFileSync(process.execPath, [runFile(repositoryRoot), 'prepare']);
    const modules = await modulesOfStart();
    expect(modules.filter((url) => /\.tsx?$|\/(tsx|esbuild|typescript|vite|pdfkit|highs)\//.test(url))).toEqual([]);
    expect(modules.filter((url) => url.includes('/apps/server/dist/')).length).toBeGreaterThan(3);
    expect(modules.length).toBeLessThan(MOST_MODULES);
  }, 600_000);
});

/** A copy of what the server is compiled from, in which a source may be changed; packages are this copy's own. */
function copySources(): string {
  const root = path.join(folder, 'copy');
  for (const each of [
    'package.json',
    'pnpm-lock.yaml',
    'pnpm-workspace.yaml',
    'packages',
    'apps/server',
    'apps/web/package.json',
  ])
    cpSync(path.join(repositoryRoot, each), path.join(root, each), {
      recursive: true,
      filter: (from) => !/[\\/](node_modules|dist)$/.test(from),
    });
  for (const place of ['node_modules', 'apps/server/node_modules', 'packages/contracts/node_modules']) {
    mkdirSync(path.join(root, place));
    for (const name of readdirSync(path.join(repositoryRoot, place)))
      if (name !== '.rootclock') symlinkSync(path.join(repositoryRoot, place, name), path.join(root, place, name));
  }
  // Installed once is enough.
  const memory = 'node_modules/.rootclock';
  mkdirSync(path.join(root, memory));
  cpSync(path.join(repositoryRoot, memory, 'install.done'), path.join(root, memory, 'install.done'));
  return root;
}

test('a changed source is compiled anew by itself, and what did not change is not', () => {
  const root = copySources();
  const compile = () => execFileSync(process.execPath, [runFile(root), 'compile'], { encoding: 'utf8' }).trim();
  const source = path.join(root, 'apps/server/src/cli/greeting.ts');
  const words = readFileSync(source, 'utf8');
  const textOf = (program: string) =>
    readdirSync(path.dirname(program))
      .filter((name) => name.endsWith('.js'))
      .map((name) => readFileSync(path.join(path.dirname(program), name), 'utf8'))
      .join('');

  const first = compile();
  expect(textOf(first)).toContain('Stop it with Ctrl-C.');
  expect(compile()).toBe(first);
  writeFileSync(source, words.replace('Stop it with Ctrl-C.', 'Stop it some day.'));
  const second = compile();
  expect(second).not.toBe(first);
  expect(textOf(second)).toContain('Stop it some day.');
  // Whoever still runs the first goes on reading it.
  expect(textOf(first)).toContain('Stop it with Ctrl-C.');
}, 600_000);

describe('the compiled server', () => {
  test('judges passwords and reckons plans in its threads', async () => {
    const address = await startServer({ DATA_DIR: path.join(folder, 'data') }).address;
    const owner = { nurseryName: 'Kept', zone: 'America/Chicago', name: 'Ada Moor', email: 'ada@example.test' };
    const { cookie } = await must(
      address,
      '',
      command('people.createFirstOwner', { ...owner, password: 'ten characters' }),
    );
    expect(await ask(address, cookie, 'planning.readPlan')).toMatchObject({ lines: [], tooLate: [] });
  }, 600_000);

  test('plans promises in a thread', async () => {
    const inside = path.join(path.dirname(inject('program')), 'inside-features-promises-solving.js');
    const worker = new Worker(pathToFileURL(inside));
    const answers: unknown[] = [];
    const answered = new Promise<void>((resolve, reject) => {
      worker.on('error', reject);
      worker.on('message', (told) => (told === 'ready' ? undefined : resolve(void answers.push(told))));
    });
    const scope = largeScope(20, 5, 1);
    const plan = planReservations(scope);
    expect(plan.length).toBeGreaterThan(0);
    worker.postMessage({ question: { name: 'plan', asked: scope } });
    await answered;
    await worker.terminate();
    expect(answers).toEqual([{ answer: plan, error: null }]);
  });

  test('names lines of its sources where it fails', () => {
    const folderOf = path.dirname(inject('program'));
    const chunk = readdirSync(folderOf).find((name) => /^backup-\w+\.js$/.test(name)) ?? '';
    const script = `
      import { register } from ${JSON.stringify(pathToFileURL(path.join(repositoryRoot, 'apps/server/bootstrap/stacks.mjs')))};
      import { backup } from ${JSON.stringify(pathToFileURL(path.join(folderOf, chunk)))};
      register();
      try { backup([]); } catch (error) { console.log(error.stack); }`;
    const stack = execFileSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8' });
    const source = path.join(repositoryRoot, 'apps/server/src/cli/backup.ts');
    const line =
      readFileSync(source, 'utf8')
        .split('\n')
        .findIndex((each) => each.includes('throw new CommandFailure')) + 1;
    expect(stack).toMatch(/^CommandFailure: Say where to/);
    expect(stack).toContain(`at backup (${source}:${line}:`);
  });
});
