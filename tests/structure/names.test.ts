import { describe, expect, test } from 'vitest';
import { allFiles, allFolders } from './repository.ts';

const topLevel = new Set([
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'pnpm-workspace.yaml',
  'pnpm-lock.yaml',
  'tsconfig.json',
  'vitest.config.ts',
  'docker-compose.yml',
  'apps',
  'packages',
  'prisma',
  'tests',
]);
const features = [
  'plants',
  'sources',
  'stock',
  'pot-life',
  'propagation',
  'clients',
  'orders',
  'promises',
  'gardens',
  'sales',
  'planning',
  'records',
  'people',
  'files',
];
/** Folders of a tier that are not features: what all of them stand on, and the web's pages that gather from all of them. */
const besides: Record<string, string[]> = {
  'packages/domain/src': ['kernel', 'statistics'],
  'packages/contracts/src': ['errors', 'kernel'],
  'apps/web/src/features': ['today', 'settings'],
};

describe('names', () => {
  test('the top level holds what was agreed, and dotfiles', () => {
    const top = allFolders().find((folder) => folder.path === '');
    const odd = [...(top?.files ?? []), ...(top?.folders ?? [])].filter(
      (name) => !name.startsWith('.') && !topLevel.has(name),
    );
    expect(odd).toEqual([]);
  });

  test('files and folders of code are in kebab case', () => {
    const kebab = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9-]+)*$/;
    const odd = allFiles('.ts', '.tsx', '.mjs', '.css').filter(
      (file) => !file.split('/').every((part) => part.startsWith('.') || kebab.test(part)),
    );
    expect(odd).toEqual([]);
  });

  test('no file or folder has a name that says nothing of what is in it', () => {
    const empty =
      /^(utils?|helpers?|common|misc|managers?|services?)(\.|$)|[-.](utils?|helpers?|managers?|services?)\./;
    const odd = allFolders().flatMap((folder) =>
      [...folder.files, ...folder.folders].filter((name) => empty.test(name)).map((name) => `${folder.path}/${name}`),
    );
    expect(odd).toEqual([]);
  });

  test.each(['packages/domain/src', 'packages/contracts/src', 'apps/server/src/features', 'apps/web/src/features'])(
    'the folders of %s are features',
    (tier) => {
      const folders = allFolders().find((folder) => folder.path === tier)?.folders ?? [];
      expect(folders.filter((name) => !features.includes(name) && !besides[tier]?.includes(name))).toEqual([]);
    },
  );

  test('a command’s file is named verb-noun and lies in a folder of commands', () => {
    const verbNoun = /\/commands\/[a-z]+(-[a-z]+)+\.ts$/;
    const odd = allFiles('.ts').filter(
      (file) => file.startsWith('apps/server/src/features/') && file.includes('/commands/') && !verbNoun.test(file),
    );
    expect(odd).toEqual([]);
  });
});
