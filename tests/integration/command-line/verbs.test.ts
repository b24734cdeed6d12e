import { expect, test } from 'vitest';
import { rootclock } from '../../support/process/command-line.ts';

test('an unknown verb is named, the known ones are listed, and the exit code is 2', async () => {
  const { code, out, err } = await rootclock(['nonsense']);
  expect(err).toMatch(/There is no verb "nonsense"[\s\S]*serve[\s\S]*check[\s\S]*allocate/);
  expect({ code, out }).toEqual({ code: 2, out: '' });
});

test('without a verb the known ones are listed and the exit code is 2', async () => {
  const { code, err } = await rootclock([]);
  expect(err).toMatch(/^Usage: /);
  expect(code).toBe(2);
});

test('a name that every object has is no verb', async () => {
  expect((await rootclock(['constructor'])).code).toBe(2);
});

test('a wrong setting is told in a sentence with exit code 1', async () => {
  const { code, err } = await rootclock(['serve'], { env: { PORT: 'http' } });
  expect(err).toBe('Rootclock: PORT must be a whole number from 0 to 65535.\n');
  expect(code).toBe(1);
});
