import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';

let database: TestDatabase;
let app: Awaited<ReturnType<typeof createApp>>;
const webRoot = mkdtempSync(path.join(tmpdir(), 'rootclock-web-'));

beforeAll(async () => {
  mkdirSync(path.join(webRoot, 'assets'));
  for (const file of ['index.html', 'pot.svg', 'manifest.webmanifest', 'layers.css', 'assets/main-4f3a.js'])
    writeFileSync(path.join(webRoot, file), 'x');
  database = await createDatabase();
  app = await createApp({ databaseUrl: database.url, webRoot });
  await app.ready();
});
afterAll(async () => {
  await app.close();
  await database.drop();
  rmSync(webRoot, { recursive: true });
});

const cachingOf = async (url: string) =>
  (await app.inject({ method: 'GET', url, headers: { accept: 'text/html' } })).headers['cache-control'];

describe('a browser keeps', () => {
  test('what is named after its content for a year', async () => {
    expect(await cachingOf('/assets/main-4f3a.js')).toBe('public, max-age=31536000, immutable');
  });

  test.each(['/', '/index.html', '/stock/lots', '/pot.svg', '/manifest.webmanifest', '/layers.css'])(
    '%s only after asking whether it is still the same',
    async (url) => {
      expect(await cachingOf(url)).toBe('no-cache');
    },
  );
});
