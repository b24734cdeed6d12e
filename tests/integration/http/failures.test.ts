// Whatever fails, wherever it fails, is answered in one form: code, message, data and the request's id.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ERRORS } from '@rootclock/contracts';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, type TestNursery } from '../../support/nursery.ts';
import { sessionOf } from '../../support/session.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
let cookie: string;
const webRoot = mkdtempSync(path.join(tmpdir(), 'rootclock-web-'));
beforeAll(async () => {
  writeFileSync(path.join(webRoot, 'index.html'), '<!doctype html>');
  database = await createDatabase();
  nursery = await openNursery(database);
  app = await createApp({ databaseUrl: database.url, webRoot, clock: nursery.clock.now });
  app.get('/broken', () => {
    throw new Error(`a secret at ${database.url}`);
  });
  await app.ready();
  cookie = `rootclock_session=${await sessionOf(nursery, 'owner')}`;
});
afterAll(async () => {
  await app.close();
  await nursery.close();
  await database.drop();
  rmSync(webRoot, { recursive: true });
});

const get = (url: string, headers: Record<string, string> = {}) => app.inject({ method: 'GET', url, headers });
const told = (code: keyof typeof ERRORS, data: object = {}) => ({
  code,
  message: code,
  data,
  requestId: expect.stringMatching(/^[\w-]{36}$/),
});

test('our own failure tells its request id and nothing else', async () => {
  const answer = await get('/broken');
  expect([answer.statusCode, answer.json()]).toEqual([500, told('fault')]);
});

describe('what is not there', () => {
  test.each([
    '/trpc',
    '/trpc/a/b',
    '/paper',
    '/paper/nothing',
    '/calendar',
    '/calendar/a/b',
    '/live/more',
    '/health/more',
    '/ready/more',
  ])('at the interface %s is told as JSON, also to a browser', async (url) => {
    const answer = await get(url, { accept: 'text/html' });
    expect([answer.statusCode, answer.json()]).toEqual([404, told('not-found', { what: 'page' })]);
  });

  test('among files is told as JSON', async () => {
    const answer = await get('/assets/nothing.js');
    expect([answer.statusCode, answer.json()]).toEqual([404, told('not-found', { what: 'page' })]);
  });

  test('among screens is the web app’s to tell', async () => {
    expect((await get('/stock/lots', { accept: 'text/html' })).body).toBe('<!doctype html>');
  });

  test.each([`/calendar/${'a'.repeat(43)}.ics`, '/calendar/nonsense'])(
    'as a calendar, %s, has the same form',
    async (url) => {
      const answer = await get(url);
      expect([answer.statusCode, answer.json()]).toEqual([404, told('not-found', { what: 'page' })]);
    },
  );

  test('as a paper has the same form', async () => {
    const answer = await get('/paper/protocols/nonsense.pdf', { cookie });
    expect([answer.statusCode, answer.json()]).toEqual([404, told('not-found', { what: 'page' })]);
  });
});

describe('who may not', () => {
  test('is told so of a paper in the same form', async () => {
    const answer = await get(`/paper/protocols/${randomUUID()}.pdf`);
    expect([answer.statusCode, answer.json()]).toEqual([401, told('not-signed-in')]);
  });

  test('is told so in the same form when a write is forged', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/trpc/people.signOut',
      payload: '{}',
      headers: { 'content-type': 'application/json', origin: 'https://elsewhere.example' },
    });
    expect([answer.statusCode, answer.json()]).toEqual([403, told('forged-request')]);
  });
});

test('no two requests have one id', async () => {
  const ids = await Promise.all(
    Array.from({ length: 20 }, async () => (await get('/paper/nothing')).json<{ requestId: string }>().requestId),
  );
  expect(new Set(ids).size).toBe(20);
});
