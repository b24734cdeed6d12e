// What `npm start`, `npm test`, `npm run rootclock`, `npm run bench` and `npm run check:allocation` do, once Node is known to be new enough.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { prepare } from './prepare.mjs';
import { refuse, root } from './folder.mjs';

export async function run([command, ...rest]) {
  process.chdir(root);
  switch (command) {
    case 'prepare':
      return prepare({ web: true });
    case 'start':
      await prepare({ web: true });
      return enter('apps/server/src/main.ts', ['serve', ...rest]);
    case 'cli':
      await prepare({ web: rest[0] === 'serve' });
      return enter('apps/server/src/main.ts', rest);
    case 'bench':
      await prepare({ web: false });
      return enter('tests/bench/bench.ts', rest);
    case 'check-allocation':
      await prepare({ web: false });
      return enter('tests/reference/allocation/check-allocation.ts', rest);
    case 'test': {
      await prepare({ web: true });
      const { runSuite } = await import('./suite.mjs');
      process.exitCode = await runSuite(rest);
      return;
    }
    default:
      refuse(
        `there is no command "${command ?? ''}" here; use npm start, npm test, npm run rootclock, npm run bench or npm run check:allocation.`,
      );
  }
}

// The program runs in this same process: a signal then has one receiver, and nothing stands between npm and the
// server that could end early and leave it behind.
async function enter(file, args) {
  const target = path.join(root, file);
  if (!existsSync(target)) refuse(`${file} is missing from this copy; fetch the repository again.`);
  process.argv = [process.argv[0], target, ...args];
  const { register } = await import('tsx/esm/api');
  register();
  await import(pathToFileURL(target).href);
}
