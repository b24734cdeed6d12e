// What is packed on its way to a browser, and what never is.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let cookie: string;
const webRoot = mkdtempSync(path.join(tmpdir(), 'rootclock-web-'));
const script = 'export const plants = "Asclepias";\n'.repeat(100);
beforeAll(async () => {
  mkdirSync(path.join(webRoot, 'assets'));
  for (const file of ['index.html', 'assets/main-4f3a.js']) {
    writeFileSync(path.join(webRoot, file), script);
    writeFileSync(path.join(webRoot, `${file}.br`), brotliCompressSync(script));
    writeFileSync(path.join(webRoot, `${file}.gz`), gzipSync(script));
  }
  database = await createDatabase();
  nursery = await openNursery(database);
  await nursery.as('owner').plants.loadReference(sent({}));
  app = await createApp({ databaseUrl: database.url, webRoot, clock: nursery.clock.now });
  await app.ready();
  cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
  rmSync(webRoot, { recursive: true });
});

const get = async (url: string, encodings: string) => {
  const { headers, rawPayload } = await app.inject({
    method: 'GET',
    url,
    headers: { cookie, accept: 'text/html', 'accept-encoding': encodings },
  });
  return {
    encoding: headers['content-encoding'],
    vary: headers.vary,
    keeping: headers['cache-control'],
    bytes: rawPayload,
  };
};
const read = (procedures: string, input: object) =>
  `/trpc/${procedures}?batch=1&input=${encodeURIComponent(JSON.stringify(input))}`;
const plants = read('plants.listPlants', { 0: {} });

describe('a file', () => {
  test.each(['/assets/main-4f3a.js', '/', '/stock/lots'])('%s goes out as it was packed', async (url) => {
    const [best, common, plain] = [
      await get(url, 'gzip, deflate, br'),
      await get(url, 'gzip'),
      await get(url, 'identity'),
    ];
    expect([best.encoding, common.encoding, plain.encoding]).toEqual(['br', 'gzip', undefined]);
    expect([brotliDecompressSync(best.bytes), gunzipSync(common.bytes), plain.bytes].map(String)).toEqual([
      script,
      script,
      script,
    ]);
    expect(best.vary).toContain('accept-encoding');
  });

  test('is kept as long as one that is not packed', async () => {
    expect((await get('/assets/main-4f3a.js', 'br')).keeping).toBe('public, max-age=31536000, immutable');
  });
});

describe('an answer', () => {
  test('that is long is packed', async () => {
    const [plain, packed] = [await get(plants, 'identity'), await get(plants, 'br')];
    expect(packed.encoding).toBe('br');
    expect(brotliDecompressSync(packed.bytes).equals(plain.bytes)).toBe(true);
    expect(packed.bytes.length).toBeLessThan(plain.bytes.length / 3);
  });

  test('that is short is not', async () => {
    expect((await get(read('stock.listPlaces', { 0: {} }), 'br')).encoding).toBeUndefined();
  });

  test.each([
    ['about people', read('people.listPeople,plants.listPlants', { 1: {} })],
    ['about people, named otherwise', read('%70eople.me,plants.listPlants', { 1: {} })],
  ])('%s, which may hold a secret beside what others wrote, is not', async (_, url) => {
    const { encoding, bytes } = await get(url, 'gzip, br');
    expect({ encoding, isLong: bytes.length > 10_000 }).toEqual({ encoding: undefined, isLong: true });
  });

  test('to a command, which may hold a new secret, is not', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/trpc/people.createCalendarAddress',
      payload: sent({}),
      headers: { cookie, 'content-type': 'application/json', 'accept-encoding': 'br' },
    });
    expect([answer.statusCode, answer.headers['content-encoding']]).toEqual([200, undefined]);
  });

  test('is none for a page of another site, which could learn from its length', async () => {
    const answer = await app.inject({
      method: 'GET',
      url: plants,
      headers: { cookie, 'sec-fetch-site': 'cross-site' },
    });
    expect([answer.statusCode, answer.json().code]).toEqual([403, 'forged-request']);
  });
});
