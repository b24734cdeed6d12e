// What must not stay in the code: notes to oneself, ways round the checkers, and SQL that takes the day from the server's clock.
import { describe, expect, test } from 'vitest';
import { allFiles, placesOf } from './repository.ts';

const code = allFiles('.ts', '.tsx', '.mjs', '.cjs');
// The words are put together here, so that this file does not find itself.
const any = (...words: [string, string][]) => words.map((parts) => parts.join('')).join('|');

const forbidden: [string, RegExp, string[]][] = [
  [
    'notes of work still to be done',
    new RegExp(`\\b(${any(['TO', 'DO'], ['FIX', 'ME'], ['XX', 'X'], ['HA', 'CK'])})\\b`),
    [...code, ...allFiles('.sql', '.prisma', '.css')],
  ],
  [
    'tests that are skipped, or that make others be skipped',
    new RegExp(
      `\\b(test|it|describe|suite)(\\.\\w+)*\\.(${any(['on', 'ly'], ['sk', 'ip'], ['sk', 'ipIf'], ['ru', 'nIf'], ['to', 'do'], ['fa', 'ils'])})\\b`,
    ),
    code,
  ],
  [
    'ways round the type checker',
    new RegExp(
      `@ts-(${any(['ig', 'nore'], ['no', 'check'], ['expect', '-error'])})|(\\bas|:) ${any(['an', 'y'])}(\\[\\])*\\s*([,;)=|&>}\\]]|$)`,
    ),
    code,
  ],
  ['ways round the linter', new RegExp(`(${any(['es', 'lint'], ['ox', 'lint'])})-disable`), code],
  [
    'paths of one machine',
    new RegExp(`(^|[^\\w.])/(${any(['wo', 'rk'], ['ho', 'me'], ['Us', 'ers'])})/`),
    [...code, ...allFiles('.md', '.json', '.yaml', '.yml', '.sql')],
  ],
];

describe('the code holds no', () => {
  test.each(forbidden)('%s', (_, pattern, files) => {
    expect(placesOf(pattern, files)).toEqual([]);
  });
});

test('no SQL takes the day from the database’s clock: “today” is the nursery’s and is handed in', () => {
  const words = `${any(['current', '_date'])}|${any(['current', '_time'])}\\b|${any(['local', 'time'])}(stamp)?\\b|now\\(\\)::${any(['da', 'te'])}`;
  expect(placesOf(new RegExp(words, 'i'), [...allFiles('.sql'), ...code])).toEqual([]);
});

test('only the settings and the command line look at the environment of the server', () => {
  const server = code.filter((file) => file.startsWith('apps/server/src/') && !file.startsWith('apps/server/src/cli/'));
  expect(placesOf(/process\.env\b/, server)).toEqual([]);
});

test('no file names a clock or a random number in the domain', () => {
  const domain = code.filter((file) => file.startsWith('packages/domain/src/') && !file.endsWith('.test.ts'));
  expect(placesOf(/\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bprocess\.|\bcrypto\./, domain)).toEqual([]);
});

test('SQL stands in stores, reads and the database’s own folder alone', () => {
  const elsewhere = code.filter(
    (file) => file.startsWith('apps/server/src/') && !/\/(db|cli)\/|[/-](store|reads)\.ts$/.test(file),
  );
  expect(
    placesOf(
      /\$(queryRaw|executeRaw)|\b(SELECT|INSERT INTO|UPDATE|DELETE FROM)\b.*\b(FROM|VALUES|SET|WHERE)\b/,
      elsewhere,
    ),
  ).toEqual([]);
});
