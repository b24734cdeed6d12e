import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { describe, expect, test } from 'vitest';
import { textOf } from './repository.ts';

interface Accepted {
  /** Any package, or these alone; a star at the end stands for the platforms that a package is built for. */
  for: 'any' | string[];
  why?: string;
}

interface Installed {
  name: string;
  license: string;
}

const accepted = JSON.parse(textOf('tests/structure/licenses.json')) as Record<string, Accepted>;

const foldersIn = (folder: string) =>
  existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map(({ name }) => name)
    : [];

/** What a package says of its license, in today's form or in the one that old packages still use. */
function licenseOf({
  license,
  licenses,
}: {
  license?: string | { type?: string };
  licenses?: { type?: string }[];
}): string {
  if (typeof license === 'string') return license;
  return license?.type ?? licenses?.map(({ type }) => type).join(' and ') ?? 'none';
}

/** Every package of every depth that is installed here: pnpm lays each one out once, as a folder that is no link. */
function installedPackages(): Installed[] {
  const store = path.join(repositoryRoot, 'node_modules/.pnpm');
  return foldersIn(store).flatMap((each) => {
    const packages = path.join(store, each, 'node_modules');
    const names = foldersIn(packages).flatMap((name) =>
      name.startsWith('@') ? foldersIn(path.join(packages, name)).map((inner) => `${name}/${inner}`) : [name],
    );
    return names
      .filter((name) => existsSync(path.join(packages, name, 'package.json')))
      .map((name) => ({
        name,
        license: licenseOf(JSON.parse(readFileSync(path.join(packages, name, 'package.json'), 'utf8')) as object),
      }));
  });
}

const isMeant = (pattern: string, name: string) =>
  pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern;
const isAccepted = ({ name, license }: Installed) => {
  const terms = accepted[license]?.for;
  return terms === 'any' || (terms?.some((pattern) => isMeant(pattern, name)) ?? false);
};

describe('the licenses of what is installed', () => {
  const installed = installedPackages();

  test('all packages are seen', () => {
    expect(installed.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['fastify', '@trpc/server', 'react', 'pg', 'vitest']),
    );
  });

  test('each is in licenses.json: look at a new one before it is written there', () => {
    expect(installed.filter((each) => !isAccepted(each)).map(({ name, license }) => `${name}: ${license}`)).toEqual([]);
  });

  test('licenses.json lists none that nothing here has', () => {
    const found = new Set(installed.map(({ license }) => license));
    expect(Object.keys(accepted).filter((license) => !found.has(license))).toEqual([]);
  });
});
