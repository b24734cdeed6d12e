// The files that belong to the repository, as the structure tests see them.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';

const notOurs = new Set(['node_modules', 'dist', 'generated', '.git', '.data', 'coverage']);

export interface Folder {
  /** Relative to the repository, with forward slashes; '' is the top level. */
  path: string;
  files: string[];
  folders: string[];
}

/** Every folder of the repository, without what is installed or made from other files. */
export function allFolders(from = ''): Folder[] {
  const entries = readdirSync(path.join(repositoryRoot, from), { withFileTypes: true }).filter(
    (entry) => !notOurs.has(entry.name) && !entry.name.endsWith('.log'),
  );
  const folders = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const here = { path: from, folders, files: entries.filter((entry) => entry.isFile()).map((entry) => entry.name) };
  return [here, ...folders.flatMap((name) => allFolders(from === '' ? name : `${from}/${name}`))];
}

/** Every file whose name ends in one of the extensions, relative to the repository. */
export function allFiles(...extensions: string[]): string[] {
  return allFolders().flatMap((folder) =>
    folder.files
      .filter((name) => extensions.some((each) => name.endsWith(each)))
      .map((name) => (folder.path === '' ? name : `${folder.path}/${name}`)),
  );
}

export const textOf = (file: string) => readFileSync(path.join(repositoryRoot, file), 'utf8');

/** Where a pattern stands, as `file:line: text`, so that a failing test is a list of places to go to. */
export function placesOf(pattern: RegExp, files: string[]): string[] {
  return files.flatMap((file) =>
    textOf(file)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${file}:${index + 1}: ${line.trim().slice(0, 120)}`] : [])),
  );
}
