// Says in stacks where a line stood in the sources. The maps are read when the first stack is asked for: Node's own way
// reads all of them at the start, which cost 25 MB and half a second.
import { readFileSync } from 'node:fs';
import { SourceMap } from 'node:module';
import { fileURLToPath } from 'node:url';

const maps = new Map();

function mapOf(url) {
  if (!maps.has(url)) {
    try {
      maps.set(url, new SourceMap(JSON.parse(readFileSync(`${fileURLToPath(url)}.map`, 'utf8'))));
    } catch {
      // What was not compiled by us has no map beside it.
      maps.set(url, undefined);
    }
  }
  return maps.get(url);
}

const place = /(file:\/\/[^\s()]+\.js):(\d+):(\d+)/;

/** `at go (file:///…/dist/…/chunk.js:10:5)` → `at go (/…/src/cli/serve.ts:31:9)`; other lines as they are. */
function original(line) {
  return line.replace(place, (whole, url, row, column) => {
    const entry = mapOf(url)?.findEntry(Number(row) - 1, Number(column) - 1);
    if (entry?.originalSource === undefined) return whole;
    const file = fileURLToPath(new URL(entry.originalSource, url));
    return `${file}:${entry.originalLine + 1}:${entry.originalColumn + 1}`;
  });
}

function words(error) {
  try {
    return Error.prototype.toString.call(error);
  } catch {
    return 'Error';
  }
}

/** From now on, in this thread. Named as what it stands in for in the inside of a compiled thread. */
export function register() {
  Error.prepareStackTrace = (error, sites) =>
    [words(error), ...sites.map((site) => `    at ${original(String(site))}`)].join('\n');
}
