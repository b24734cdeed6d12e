import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { beforeAll, describe, expect, test } from 'vitest';

interface Issues {
  issues: { file: string; files: { name: string }[]; exports: { name: string }[] }[];
}

let found: Issues;
beforeAll(() => {
  const args = [
    path.join(repositoryRoot, 'node_modules/knip/bin/knip.js'),
    '--no-progress',
    '--include',
    'files,exports',
    '--reporter',
    'json',
  ];
  const { stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: repositoryRoot,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  if (!stdout.startsWith('{')) throw new Error(`knip gave no answer:\n${stdout}${stderr}`);
  found = JSON.parse(stdout) as Issues;
}, 120_000);

describe('code that nothing uses', () => {
  test('no file', () => {
    expect(found.issues.filter((issue) => issue.files.length > 0).map((issue) => issue.file)).toEqual([]);
  });

  // What a package's index hands out is its interface and may wait for its first user.
  test('no export: remove it, or stop exporting what only its own file uses', () => {
    expect(found.issues.flatMap(({ file, exports }) => exports.map(({ name }) => `${name} in ${file}`))).toEqual([]);
  });
});
