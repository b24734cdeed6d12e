// Every address that the web app registers, read from where its features register them.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';

const web = path.join(repositoryRoot, 'apps', 'web', 'src');

const sources = readdirSync(web, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => readFileSync(path.join(web, file), 'utf8').replaceAll(/\/\*[^]*?\*\//g, ''));

const found = sources.flatMap((text) =>
  text
    .split(/\bcreateRoute\(/)
    .slice(1)
    .map((rest) => /^\s*\{[^]*?\b(path|id): '([^']+)'/.exec(rest)),
);

/** Routes without an address, which only frame others, are left out; one that cannot be read is an error and not left out. */
export const routes: string[] = found.flatMap((match) => {
  if (match === null) throw new Error('a route was registered without an address that can be read here');
  return match[1] === 'path' && match[2] !== undefined ? [match[2]] : [];
});
