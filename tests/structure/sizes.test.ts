import { expect, test } from 'vitest';
import { allFiles, allFolders, textOf } from './repository.ts';

const mostLines = 250;
const mostTestLines = 350;
const mostFiles = 20;

test(`no file has more than ${mostLines} lines and no test more than ${mostTestLines}: a longer one hides a second noun`, () => {
  // A test file is a list of sentences and is read by its headings, so it may be longer.
  const limitOf = (file: string) => (/\.test\.tsx?$/.test(file) ? mostTestLines : mostLines);
  const long = allFiles('.ts', '.tsx', '.mjs', '.cjs', '.css')
    .map((file) => ({ file, lines: textOf(file).split('\n').length }))
    .filter(({ file, lines }) => lines > limitOf(file) + 1);
  expect(long).toEqual([]);
});

test(`no folder has more than ${mostFiles} files: a fuller one lacks a noun`, () => {
  // A test beside its code doubles nothing a reader has to find, so the pair counts once.
  const full = allFolders()
    .map(({ path, files }) => ({
      path,
      count: path.startsWith('tests') ? files.length : files.filter((name) => !/\.test\.tsx?$/.test(name)).length,
    }))
    .filter(({ path, count }) => path !== '' && count > mostFiles)
    .map(({ path, count }) => `${path} has ${count} files`);
  expect(full).toEqual([]);
});
