// What waited on a device, in one request: each entry by itself, in order, through the very path of an entry that is sent alone.
import { randomUUID } from 'node:crypto';
import { Writable } from 'node:stream';
import { type EntryOutcome, MOST_ENTRIES } from '@rootclock/contracts';
import type { Role } from '@rootclock/domain';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { createApp, type AppParts } from '../../../apps/server/src/app.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { cookieOf } from '../../support/session.ts';
import { openLine } from '../../support/process/cut-line.ts';

let database: TestDatabase;
let nursery: TestNursery;
let app: Awaited<ReturnType<typeof createApp>>;
beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
});
afterEach(() => app.close());
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const open = async (parts: Partial<AppParts> = {}) => {
  app = await createApp({ databaseUrl: database.url, clock: nursery.clock.now, ...parts });
  await app.ready();
};

interface Entry {
  name: string;
  commandId: string;
  personId: string;
  body: unknown;
  after: string[];
}

const entryOf = (name: string, body: unknown, change: Partial<Entry> = {}): Entry => ({
  name,
  commandId: randomUUID(),
  personId: nursery.people.grower.personId,
  body,
  after: [],
  ...change,
});
const bench = (code: string) => ({ placeId: randomUUID(), code, kind: 'bench' as const });
const addBench = (code: string, change: Partial<Entry> = {}) => entryOf('stock.addPlace', bench(code), change);

const post = async (entries: unknown, role: Role | null = 'grower', headers: Record<string, string> = {}) =>
  app.inject({
    method: 'POST',
    url: '/trpc/outbox.sendEntries',
    payload: { entries },
    headers: { 'content-type': 'application/json', ...(role && { cookie: await cookieOf(nursery, role) }), ...headers },
  });
const send = async (entries: Entry[], role: Role = 'grower'): Promise<EntryOutcome[]> => {
  const answer = await post(entries, role);
  expect(answer.statusCode, answer.body).toBe(200);
  return answer.json().result.data.outcomes;
};
const told = (outcome: EntryOutcome | undefined) =>
  outcome?.kind === 'refused' ? outcome.failure.code : (outcome?.kind ?? 'waits');
const codesOf = async (like: string) =>
  (
    await nursery.sql<{ code: string }>(
      `SELECT place.code FROM place JOIN command ON command.nursery_id = place.nursery_id
        AND command.answer ->> 'placeId' = place.id::text WHERE place.code LIKE $1 ORDER BY command.version`,
      [like],
    )
  ).map(({ code }) => code);

describe('entries in one request', () => {
  test('take effect in order, each in a transaction of its own', async () => {
    await open();
    const entries = Array.from({ length: MOST_ENTRIES }, (_, at) => addBench(`A${at}`));
    const before = await nursery.sql<{ version: number }>('SELECT version FROM nursery');
    // A machine that does much else may run only the first of them in one request, as it says.
    for (let from = 0; from < entries.length;) {
      const outcomes = await send(entries.slice(from));
      expect(new Set(outcomes.map(told))).toEqual(new Set(['answered']));
      from += outcomes.length;
    }
    expect(await codesOf('A%')).toEqual(entries.map((_, at) => `A${at}`));
    const after = await nursery.sql<{ version: number }>('SELECT version FROM nursery');
    // The day's roll may have gone before.
    expect(Number(after[0]?.version) - Number(before[0]?.version)).toBeGreaterThanOrEqual(MOST_ENTRIES);
  });

  test('are answered from store when they come again, alone or together', async () => {
    await open();
    const alone = sent(bench('B1'));
    const first = await nursery.as('grower').stock.addPlace(alone);
    const entries = [entryOf('stock.addPlace', alone.body, { commandId: alone.commandId }), addBench('B2')];
    const answers = await send(entries);
    expect(answers[0]).toEqual({ kind: 'answered', answer: JSON.parse(JSON.stringify(first)) });
    expect(await send(entries)).toEqual(answers);
    expect(await codesOf('B%')).toEqual(['B1', 'B2']);
  });

  test('that are refused leave out what depends on them, and nothing else', async () => {
    await open();
    await send([addBench('C1')]);
    const twice = addBench('C1');
    const child = addBench('C2', { after: [twice.commandId] });
    const grandchild = addBench('C3', { after: [child.commandId] });
    const outcomes = await send([twice, child, grandchild, addBench('C4')]);
    expect(outcomes.map(told)).toEqual(['code-taken', 'left-out', 'left-out', 'answered']);
    expect(await codesOf('C%')).toEqual(['C1', 'C4']);
  });

  test('are refused by role, contract and name as they are alone', async () => {
    await open();
    const crew = { personId: nursery.people.crew.personId };
    const outcomes = await send(
      [
        addBench('D1', crew),
        entryOf('stock.loseFromLot', { units: 'many' }, crew),
        entryOf('stock.noSuch', {}, crew),
        entryOf('people.me', {}, crew),
        entryOf('outbox.sendEntries', { entries: [] }, crew),
        entryOf('__proto__', {}, crew),
      ],
      'crew',
    );
    expect(outcomes.map(told)).toEqual([
      'not-allowed',
      'invalid-input',
      'not-found',
      'not-found',
      'not-found',
      'not-found',
    ]);
    expect(await codesOf('D%')).toEqual([]);
  });

  test('never sign anybody in or out, nor change a password', async () => {
    await open();
    for (const name of ['people.signIn', 'people.signOut', 'people.changeOwnPassword', 'people.endOtherSessions'])
      expect((await send([entryOf(name, {})])).map(told)).toEqual(['not-found']);
  });

  test('stop at one that is another person’s, and write nothing of the rest', async () => {
    await open();
    const outcomes = await send([
      addBench('E1'),
      addBench('E2', { personId: nursery.people.owner.personId }),
      addBench('E3'),
    ]);
    expect(outcomes.map(told)).toEqual(['answered', 'another-person']);
    expect(await codesOf('E%')).toEqual(['E1']);
  });

  test('wait behind one that failed by a fault, which is written down', async () => {
    await nursery.sql(`CREATE FUNCTION stumble() RETURNS trigger LANGUAGE plpgsql AS
      $$ BEGIN IF NEW.code = 'M2' THEN RAISE 'the machine stumbled' USING ERRCODE = '22012'; END IF; RETURN NEW; END $$`);
    await nursery.sql('CREATE TRIGGER stumbles BEFORE INSERT ON place FOR EACH ROW EXECUTE FUNCTION stumble()');
    const written: string[] = [];
    const stream = new Writable({ write: (piece: Buffer, _, done) => (written.push(String(piece)), done()) });
    await open({ log: { level: 'error', stream } });
    expect((await send(['M1', 'M2', 'M3'].map((code) => addBench(code)))).map(told)).toEqual(['answered', 'fault']);
    expect(written.map((line) => JSON.parse(line))).toMatchObject([{ msg: 'fault', procedure: 'stock.addPlace' }]);
    expect(await codesOf('M%')).toEqual(['M1']);
  });

  test('are of unknown outcome where the database is lost, and nothing of them is written', async () => {
    const line = await openLine(database.url);
    await open({ databaseUrl: line.url });
    const cookie = await cookieOf(nursery, 'grower');
    const [first] = await send([addBench('G1')]);
    expect(told(first)).toBe('answered');
    await line.close();
    const answer = await post([addBench('G2'), addBench('G3')], null, { cookie });
    expect(answer.statusCode).toBe(503);
    expect(await codesOf('G%')).toEqual(['G1']);
  });
});

describe('the request that carries them', () => {
  test.each([
    ['nothing', () => []],
    ['one too many', () => Array.from({ length: MOST_ENTRIES + 1 }, (_, at) => addBench(`H${at}`))],
    ['no list', () => 'entries'],
    ['an entry without a person', () => [{ ...addBench('H'), personId: undefined }]],
  ])('is refused whole with %s in it', async (_, entries) => {
    await open();
    expect((await post(entries())).statusCode).toBe(400);
    expect(await codesOf('H%')).toEqual([]);
  });

  test('needs somebody signed in', async () => {
    await open();
    expect((await post([addBench('I1')], null)).json().error.data.code).toBe('not-signed-in');
  });

  test('is refused when a page of another site sends it', async () => {
    await open();
    const forged: Record<string, string>[] = [
      { 'sec-fetch-site': 'cross-site' },
      { origin: 'https://elsewhere.example' },
    ];
    for (const headers of forged)
      expect((await post([addBench('I2')], 'grower', headers)).json().code).toBe('forged-request');
    expect((await post([addBench('I2')], 'grower', { 'content-type': 'text/plain' })).statusCode).toBe(415);
    expect(await codesOf('I%')).toEqual([]);
  });

  test('counts as many calls as it has entries; what comes beyond the limit waits', async () => {
    await open({ callsAMinute: 3 });
    const answer = await post(['J1', 'J2', 'J3', 'J4', 'J5'].map((code) => addBench(code)));
    expect((answer.json().result.data.outcomes as EntryOutcome[]).map(told)).toEqual([
      'answered',
      'answered',
      'answered',
      'too-many-requests',
    ]);
    expect(answer.headers['retry-after']).toBeDefined();
    expect(await codesOf('J%')).toEqual(['J1', 'J2', 'J3']);
  });

  test('may be as large as the others, and not larger', async () => {
    await open();
    const large = (code: string) => entryOf('stock.addPlace', { ...bench(code), note: 'x'.repeat(200 * 1024) });
    expect((await post([large('K1')])).statusCode).toBe(200);
    const answer = await post([large('K1'), large('K2')]);
    expect([answer.statusCode, answer.json().code]).toEqual([413, 'body-too-large']);
  });

  test('names its person and its instant, and is kept nowhere', async () => {
    await open();
    const { headers } = await post([addBench('L1')]);
    expect(headers).toMatchObject({
      'rootclock-person': nursery.people.grower.personId,
      'cache-control': 'no-store',
      'rootclock-now': expect.stringMatching(/^\d+$/),
    });
  });
});
