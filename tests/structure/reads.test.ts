// What screens read is found in one way: its statements in `reads.ts`, or `<noun>-reads.ts` where a folder has several; a query in the same file as its
// statements, or beside them in a file of its own name, as a command is.
import { expect, test } from 'vitest';
import { allFiles, allFolders, textOf } from './repository.ts';

const features = 'apps/server/src/features/';
const kebab = (name: string) => name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

test('no folder of the server is one for reads or queries', () => {
  const folders = allFolders().map(({ path }) => path);
  expect(folders.filter((path) => path.startsWith(features) && /\/(reads|queries)$/.test(path))).toEqual([]);
});

test('a query stands with its statements, or in a file of its own name', () => {
  const queries = allFiles('.ts')
    .filter((file) => file.startsWith(features) && !/\/([a-z-]+-)?reads\.ts$/.test(file))
    .flatMap((file) =>
      [...textOf(file).matchAll(/^export const (\w+) = query\(/gm)].map(([, name = '']) => ({ file, name })),
    );
  expect(queries.length).toBeGreaterThan(0);
  expect(queries.filter(({ file, name }) => !file.endsWith(`/${kebab(name)}.ts`))).toEqual([]);
});
