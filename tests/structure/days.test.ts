// Days on screens come one way: today from the session's clock, and the last day of a kind of work from `useEntryDay`.
import { expect, test } from 'vitest';
import { allFiles, placesOf, textOf } from './repository.ts';

const web = allFiles('.ts', '.tsx').filter((file) => file.startsWith('apps/web/src/') && !/\.test\.tsx?$/.test(file));
const without = (...files: string[]) =>
  web.filter((file) => !files.some((each) => file.startsWith(`apps/web/src/${each}`)));

test('only the memory of the tab and the device touches the browser’s storage', () => {
  expect(
    placesOf(
      /\b(sessionStorage|localStorage)\b/,
      without('lib/remember.ts', 'lib/outbox/mending.ts', 'messages/language.ts', 'shell/theme.ts'),
    ),
  ).toEqual([]);
});

/** The arguments of each call of `useRemembered`, over however many lines. */
function remembered(file: string): string[] {
  return [...textOf(file).matchAll(/\buseRemembered(?:<[^>]*>)?\(([^;]*?)\)(?:;|,| =>)/g)].map(([, said = '']) =>
    said.replaceAll(/\s+/g, ' '),
  );
}
const isOfADay = (said: string) => /\b(today|day|on|date)\b|[a-z](On|Day|Date)\b/.test(said);

test('no place but one remembers a day', () => {
  const found = web.flatMap((file) =>
    remembered(file)
      .filter(isOfADay)
      .map((said) => `${file}: ${said}`),
  );
  expect(found).toEqual(['apps/web/src/lib/entry-day.ts: `${work}.day`, { on: today, today }, isKeptDay']);
});

test('no screen asks the device for the time: its clock may be wrong by hours', () => {
  expect(
    placesOf(
      /\bDate\.now\b|\bnew Date\(\)/,
      without('lib/clock/', 'lib/api/heard-fetch.ts', 'lib/outbox/browser-outbox.ts'),
    ),
  ).toEqual([]);
});

test('no state of a screen begins with today, since it would stay so after midnight', () => {
  expect(placesOf(/\buseState\b.*\btoday\b/, without('lib/entry-day.ts', 'lib/form/use-command-form.ts'))).toEqual([]);
});
