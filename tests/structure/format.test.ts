import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { expect, test } from 'vitest';

test('every file has the form that `npx oxfmt` gives it', () => {
  const oxfmt = path.join(repositoryRoot, 'node_modules/oxfmt/bin/oxfmt');
  const { stdout, stderr, status } = spawnSync(process.execPath, [oxfmt, '--list-different'], {
    cwd: repositoryRoot,
    encoding: 'utf8',
  });
  expect({ status, different: stdout.trim(), stderr: stderr.trim() }).toEqual({ status: 0, different: '', stderr: '' });
});
