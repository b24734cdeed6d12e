import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Plugin } from 'vite';

/** What is packed already, such as fonts and pictures, only grows. */
const TEXTS = /\.(js|css|html|svg|json|webmanifest|wasm)$/;
/** What fits into one packet is not sent any sooner for being smaller. */
const WORTH_BYTES = 1024;

const pack = {
  '.br': (text: Buffer) =>
    promisify(brotliCompress)(text, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: text.length } }),
  '.gz': (text: Buffer) => promisify(gzip)(text, { level: 9 }),
};

async function packBeside(file: string): Promise<void> {
  const text = await readFile(file);
  if (text.length < WORTH_BYTES) return;
  await Promise.all(
    Object.entries(pack).map(async ([ending, packed]) => {
      const bytes = await packed(text);
      if (bytes.length < text.length) await writeFile(file + ending, bytes);
    }),
  );
}

/** Lays a packed one (brotli and gzip, as well as can be) beside each built file, so that the server packs none while somebody waits. */
export function packedFiles(): Plugin {
  let folder = '';
  return {
    name: 'packed-files',
    apply: 'build',
    configResolved: ({ root, build }) => void (folder = path.resolve(root, build.outDir)),
    async closeBundle() {
      const files = await readdir(folder, { recursive: true });
      await Promise.all(files.filter((file) => TEXTS.test(file)).map((file) => packBeside(path.join(folder, file))));
    },
  };
}
