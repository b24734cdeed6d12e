// A campaign whose files were moved would try nothing, and say that all is well.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { describe, expect, test } from 'vitest';
import { campaigns } from '../campaign/campaigns.ts';

describe.each(Object.entries(campaigns))('the campaign %s', (_, { files, rounds }) => {
  test('finds its files and goes on for at least a round', () => {
    expect(files.filter((file) => !existsSync(path.join(repositoryRoot, file)))).toEqual([]);
    expect(files.length).toBeGreaterThan(0);
    expect(rounds).toBeGreaterThan(0);
  });
});
