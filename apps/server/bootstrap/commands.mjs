// What `npm start`, `npm test`, `npm run rootclock`, `npm run bench` and `npm run campaign` do, once Node is known to be new enough.
// `compile` is for tests: it says where the compiled server lies.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { compiledServer, prepare } from './prepare.mjs';
import { refuse, root } from './folder.mjs';

export async function run([command, ...rest]) {
  process.chdir(root);
  switch (command) {
    case 'prepare':
      return prepare({ web: true, server: true });
    case 'start':
      await prepare({ web: true, server: true });
      return enterCompiled(['serve', ...rest]);
    case 'cli':
      await prepare({ web: rest[0] === 'serve', server: true });
      // The verb for developers brings engines along that are not compiled.
      return rest[0] === 'schema' ? enterSource('apps/server/src/main.ts', rest) : enterCompiled(rest);
    case 'compile':
      await prepare({ server: true });
      return console.log(path.join(root, compiledServer()));
    case 'bench':
      await prepare({});
      return enterSource('tests/bench/bench.ts', rest);
    case 'campaign':
      await prepare({ web: true, server: true });
      return enterSource('tests/campaign/campaign.ts', rest);
    case 'test': {
      await prepare({ web: true, server: true });
      const { runSuite } = await import('./suite.mjs');
      process.exitCode = await runSuite(rest);
      return;
    }
    default:
      refuse(
        `there is no command "${command ?? ''}" here; use npm start, npm test, npm run rootclock, npm run bench or npm run campaign.`,
      );
  }
}

// The program runs in this same process: a signal then has one receiver, and nothing stands between npm and the
// server that could end early and leave it behind.
async function enter(file, args) {
  const target = path.join(root, file);
  if (!existsSync(target)) refuse(`${file} is missing from this copy; fetch the repository again.`);
  process.argv = [process.argv[0], target, ...args];
  await import(pathToFileURL(target).href);
}

async function enterCompiled(args) {
  const { register } = await import('./stacks.mjs');
  register();
  return enter(compiledServer(), args);
}

/** What only developers run is translated as it is read. */
async function enterSource(file, args) {
  const { register } = await import('tsx/esm/api');
  register();
  return enter(file, args);
}
