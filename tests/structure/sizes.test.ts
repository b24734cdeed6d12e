import { expect, test } from 'vitest';
import { allFiles, allFolders, textOf } from './repository.ts';

const mostLines = 250;
const mostFiles = 12;

test(`no file has more than ${mostLines} lines: a longer one hides a second noun`, () => {
  const long = allFiles('.ts', '.tsx', '.mjs', '.cjs', '.css')
    .map((file) => ({ file, lines: textOf(file).split('\n').length }))
    .filter(({ lines }) => lines > mostLines + 1);
  expect(long).toEqual([]);
});

test(`no folder has more than ${mostFiles} files: a fuller one lacks a noun`, () => {
  const full = allFolders()
    .filter((folder) => folder.path !== '' && folder.files.length > mostFiles)
    .map((folder) => `${folder.path} has ${folder.files.length} files`);
  expect(full).toEqual([]);
});
