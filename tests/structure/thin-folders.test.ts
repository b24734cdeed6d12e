// A folder of one or two files is none: a reader opens it and has learned nothing that its files' names did not say. They merge upward.
import { expect, test } from 'vitest';
import { allFolders, type Folder } from './repository.ts';

/** A test beside its code counts with it, and a folder in a folder is one thing to open. */
const thingsIn = ({ path, files, folders }: Folder) =>
  folders.length + (path.startsWith('tests/') ? files : files.filter((name) => !/\.test\.tsx?$/.test(name))).length;

// A command is looked for in a folder of that name, be it the only one.
const ours = /^(apps\/[^/]+\/src|packages\/[^/]+\/src|tests)\//;
const thin = allFolders()
  .filter((folder) => ours.test(`${folder.path}/`) && thingsIn(folder) <= 2 && !folder.path.endsWith('/commands'))
  .map(({ path }) => path);

/** Folders still to be merged upward. This list only grows shorter: what is mended leaves it. */
const notYetMended = [
  'apps/web/src/lib/read',
  'tests/bench/load/planning',
  'tests/browser/editing',
  'tests/browser/learning',
  'tests/browser/people',
  'tests/browser/planning',
  'tests/browser/propagation',
  'tests/browser/sources',
  'tests/integration/ledger',
  'tests/integration/pot-life',
  'tests/integration/pot-life-rules',
  'tests/integration/promises/trays',
  'tests/integration/sources',
  'tests/integration/winter',
];

test('no folder holds only one or two things', () => {
  expect(thin.filter((path) => !notYetMended.includes(path))).toEqual([]);
});

test('the list of thin folders names none that is mended or gone', () => {
  expect(notYetMended.filter((path) => !thin.includes(path))).toEqual([]);
});
