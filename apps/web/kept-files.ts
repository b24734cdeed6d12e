import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { build, type Plugin } from 'vite';

/** Where browsers look for the worker: at the top, since it may serve only what lies beneath it. */
const WORKER = 'service-worker.js';

/** What a worker keeps of a file; those named after their content need no revision. */
async function keptFile(folder: string, file: string): Promise<{ url: string; revision: string | null }> {
  const url = `/${file.split(path.sep).join('/')}`;
  if (url.startsWith('/assets/')) return { url, revision: null };
  const content = await readFile(path.join(folder, file));
  return { url, revision: createHash('sha256').update(content).digest('hex').slice(0, 16) };
}

/** Builds the worker with the list of all built files in it, so that it changes whenever one of them does. */
export function keptFiles(): Plugin {
  let root = '';
  let folder = '';
  return {
    name: 'kept-files',
    apply: 'build',
    configResolved: (config) => {
      root = config.root;
      folder = path.resolve(root, config.build.outDir);
    },
    async writeBundle() {
      const entries = await readdir(folder, { recursive: true, withFileTypes: true });
      const files = entries
        .filter((entry) => entry.isFile())
        .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
        .sort();
      const kept = await Promise.all(files.map((file) => keptFile(folder, file)));
      await build({
        configFile: false,
        root,
        logLevel: 'warn',
        publicDir: false,
        define: { SHELL_FILES: JSON.stringify(kept), 'process.env.NODE_ENV': '"production"' },
        build: {
          outDir: folder,
          emptyOutDir: false,
          target: 'es2022',
          rolldownOptions: {
            input: path.join(root, 'src/worker/service-worker.ts'),
            output: { format: 'iife', entryFileNames: WORKER },
          },
        },
      });
    },
  };
}
