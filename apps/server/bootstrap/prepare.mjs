// Brings a clone from "just fetched" to "can run". Each step remembers what it was done for and does nothing when that
// has not changed, so that a second start is quick. Everything said goes to standard error: standard output belongs to
// the command that was asked for.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { nodeTool, npmCommand, quietly } from './child.mjs';
import { alone, fingerprint, keepNewest, mustBeWritable, remember, remembered, root } from './folder.mjs';

const manifests = [
  'package.json',
  'pnpm-lock.yaml',
  'pnpm-workspace.yaml',
  'apps/server/package.json',
  'apps/web/package.json',
  'packages/domain/package.json',
  'packages/contracts/package.json',
];

/**
 * The pinned pnpm, in this clone's own folder. Not through npx, whose shared cache breaks with older npm when two clones
 * fill it at the same moment, and which asks before it fetches.
 */
async function fetchPnpm() {
  const pinned = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')).packageManager;
  const folder = path.join(root, 'node_modules', '.rootclock', pinned.replace('@', '-'));
  const program = path.join(folder, 'node_modules', '.bin', process.platform === 'win32' ? 'pnpm.cmd' : 'pnpm');
  if (!existsSync(program)) {
    const [npm, ...before] = npmCommand();
    const quiet = ['--no-save', '--no-package-lock', '--no-audit', '--no-fund', '--loglevel=error'];
    await quietly(npm, [...before, 'install', pinned, '--prefix', folder, '--ignore-scripts=false', ...quiet], {
      failure: `${pinned} could not be fetched. What npm said stands above; a missing network is the usual cause.`,
    });
  }
  return program;
}

const install = {
  name: 'install',
  title: 'Installing packages (the first time takes a minute)',
  print: () => fingerprint(manifests, `${process.platform} ${process.arch}`),
  present: () => 'node_modules/.pnpm',
  async run() {
    // NODE_ENV because production would leave out the tools that build the web app; CI because no question can be
    // answered here.
    await quietly(await fetchPnpm(), ['install', '--frozen-lockfile'], {
      env: { NODE_ENV: 'development', CI: 'true' },
      failure:
        'the packages could not be installed. What the installer said stands above; a missing network is the usual cause.',
    });
  },
};

const buildWeb = {
  name: 'web',
  title: 'Building the web app',
  print: () => fingerprint(['apps/web', 'packages', 'pnpm-lock.yaml']),
  present: () => 'apps/web/dist/index.html',
  run() {
    const [node, cli] = nodeTool('apps', 'web', 'node_modules', 'vite', 'bin', 'vite.js');
    return quietly(node, [cli, 'build', 'apps/web', '--logLevel', 'warn'], {
      env: { NODE_ENV: 'production' },
      failure: 'the web app could not be built; see above.',
    });
  },
};

/** Each compiled server has a folder of its own: one that runs still reads parts of it when the next is compiled. */
const compiledFolder = (print) => path.join('apps', 'server', 'dist', print.slice(0, 16));
const KEPT_SERVERS = 3;

const compileServer = {
  name: 'server',
  title: 'Compiling the server',
  print: () => fingerprint(['apps/server/src', 'apps/server/bootstrap', 'packages', 'pnpm-lock.yaml']),
  present: () => path.join(compiledFolder(remembered('server')), 'main.js'),
  async run(print) {
    const [node, compile] = nodeTool('apps', 'server', 'bootstrap', 'compile.mjs');
    await quietly(node, [compile, compiledFolder(print)], {
      failure: 'the server could not be compiled; see above.',
    });
    keepNewest(path.join(root, 'apps', 'server', 'dist'), KEPT_SERVERS);
  },
};

/** The compiled program that was last prepared. */
export const compiledServer = () => path.join(compiledFolder(remembered('server')), 'main.js');

const due = (step) => !existsSync(path.join(root, step.present())) || remembered(step.name) !== step.print();

/** Installs, and compiles or builds what is asked for, as far as sources changed since the last time. */
export async function prepare({ web = false, server = false }) {
  const steps = [install, ...(server ? [compileServer] : []), ...(web ? [buildWeb] : [])];
  if (!steps.some(due)) return;
  mustBeWritable();
  await alone(async () => {
    for (const step of steps.filter(due)) {
      const print = step.print();
      const startedAt = Date.now();
      console.error(`${step.title}…`);
      await step.run(print);
      remember(step.name, print);
      console.error(`  done in ${((Date.now() - startedAt) / 1000).toFixed(1)} s`);
    }
  });
}
