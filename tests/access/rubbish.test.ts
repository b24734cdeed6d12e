import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { openServer, type TestNursery } from '../support/nursery.ts';
import { cloneNursery } from '../support/sample-bodies/clone.ts';
import { addSampleRows, bodiesOf, type SampleRows, withNewIds } from '../support/sample-bodies/index.ts';
import { tries } from '../support/tries.ts';
import { askerOf, envelopeOf, listed, sessionPaths } from './asking.ts';
import { arrived, holdsBrokenText, spoilt } from './rubbish-bodies.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let first: { nurseryId: string; rows: SampleRows };
let app: Awaited<ReturnType<typeof createApp>>;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  const nursery = await server.addNursery();
  first = { nurseryId: nursery.nurseryId, rows: await addSampleRows(nursery, 'oursword') };
  app = await createApp({ databaseUrl: database.url });
}, 120_000);
afterAll(async () => {
  await app.close();
  await server.close();
  await database.drop();
});

const round = tries(12);

describe.each(listed.map(({ path, operation }) => [path, operation] as const))('%s', (path, operation) => {
  it('answers every body without a fault, and none with a text that cannot be kept but by refusing it', async () => {
    // What is accepted all the same changes something, so each operation has a nursery of its own.
    const { nursery, rows } = await cloneNursery(server, first);
    const ask = askerOf(nursery);
    await fc.assert(
      fc.asyncProperty(spoilt(bodiesOf(path, withNewIds(rows))), async (body) => {
        const answer = await ask(path, envelopeOf(operation, body, randomUUID()));
        expect(answer.ok ? 'done' : answer.class).not.toBe('fault');
        if (holdsBrokenText(body)) expect(answer.ok).toBe(false);
      }),
      round,
    );
  });
});

const envelopes = [{ commandId: '00000000-0000-4000-8000-000000000000', body: {} }];
const signIns = [
  ...envelopes,
  { commandId: '00000000-0000-4000-8000-000000000000', body: { email: 'a@example.test', password: 'ten characters' } },
];

describe('what opens and ends sessions', () => {
  it.each(sessionPaths)('%s answers every input without a fault', async (path) => {
    const nursery = await server.addNursery();
    const ask = askerOf(nursery as Pick<TestNursery, 'runner' | 'app' | 'people'>);
    await fc.assert(
      fc.asyncProperty(spoilt(signIns), async (input) => {
        const answer = await ask(path, input, null);
        expect(answer.ok ? 'done' : answer.class).not.toBe('fault');
      }),
      round,
    );
  });
});

describe('a command', () => {
  it('answers every envelope without a fault', async () => {
    const { nursery } = await cloneNursery(server, first);
    const ask = askerOf(nursery);
    await fc.assert(
      fc.asyncProperty(spoilt(envelopes), async (envelope) => {
        const answer = await ask('stock.loseFromLot', envelope);
        expect(answer.ok ? 'done' : answer.class).toBe('input');
      }),
      round,
    );
  });
});

describe('over HTTP', () => {
  const odd = [
    '',
    '{',
    'null',
    '[]',
    '"',
    '{"commandId":',
    '\0',
    'a=b',
    JSON.stringify(arrived([1, { 0: null }])),
    `{"a":${'['.repeat(5000)}${']'.repeat(5000)}}`,
    '{"__proto__":{"x":1}}',
  ];
  it.each(odd.map((payload, at) => [at, payload] as const))(
    'payload %i is refused as input, whatever type it claims to be',
    async (_, payload) => {
      for (const type of [
        'application/json',
        'application/json; charset=utf-8',
        'text/plain',
        'multipart/form-data; boundary=x',
        'application/x-www-form-urlencoded',
        'nonsense',
        undefined,
      ]) {
        const answer = await app.inject({
          method: 'POST',
          url: '/trpc/people.signIn',
          headers: type === undefined ? {} : { 'content-type': type },
          payload,
        });
        const told = answer.json<{ code?: string; error?: { data?: { code?: string } } }>();
        expect({ type, status: answer.statusCode, code: told.error?.data?.code ?? told.code }).toEqual({
          type,
          status: type?.startsWith('application/json') ? 400 : 415,
          code: 'invalid-input',
        });
      }
    },
  );

  const nowhere = [
    '/trpc',
    '/trpc/',
    '/trpc/people',
    '/trpc/people.nobody',
    '/trpc/__proto__',
    '/trpc/people.__proto__',
    '/trpc/people.signIn',
    '/%00',
    '/..%2f..%2fetc%2fpasswd',
  ];
  it.each(nowhere)('%s leads nowhere', async (url) => {
    const { statusCode } = await app.inject({ method: 'GET', url });
    expect([404, 405]).toContain(statusCode);
  });

  const odder = [
    '/trpc/people.me?input=%',
    '/trpc/people.me?input=%00',
    '/trpc/people.me?batch=1',
    '/trpc/people.me,people.me?batch=1&input={}',
    '/trpc/people.me?batch=1&input=%7B%220%22%3A',
    '/%ff',
    '/live',
  ];
  it.each(odder)('%s makes no fault', async (url) => {
    const { statusCode, body } = await app.inject({ method: 'GET', url });
    expect({ isFault: statusCode >= 500, saysFault: body.includes('"fault"') }).toEqual({
      isFault: false,
      saysFault: false,
    });
  });
});
