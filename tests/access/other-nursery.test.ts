import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../support/database.ts';
import { openServer, type TestNursery } from '../support/nursery.ts';
import { addSampleRows, bodiesOf, type SampleRows, withIdsOf, withNewIds } from '../support/sample-bodies/index.ts';
import { cloneNursery } from '../support/sample-bodies/clone.ts';
import { type Answer, askerOf, envelopeOf, listed } from './asking.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let ours: Omit<TestNursery, 'close'>;
let ourRows: SampleRows;
let theirs: Omit<TestNursery, 'close'>;
let theirRows: SampleRows;
let ask: ReturnType<typeof askerOf>;
let before: string;

/** All that is stored of a nursery, its version included. */
const everythingOf = async (nurseryId: string) => {
  const tables = await server.sql<{
    name: string;
  }>(`SELECT c.relname AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'nursery_id' AND NOT a.attisdropped
    WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace ORDER BY 1`);
  const parts = tables.map(
    ({ name }) =>
      `SELECT '${name} ' || md5(string_agg(t::text, '|' ORDER BY t::text)) AS stored FROM ${name} t WHERE nursery_id = '${nurseryId}'`,
  );
  const rows = await server.sql<{ stored: string | null }>(
    [...parts, `SELECT 'nursery ' || md5(n::text) FROM nursery n WHERE id = '${nurseryId}'`].join(' UNION ALL '),
  );
  return rows.map(({ stored }) => stored).join('\n');
};

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  ours = await server.addNursery();
  theirs = await server.addNursery();
  ourRows = await addSampleRows(ours, 'oursword');
  theirRows = await addSampleRows(theirs, 'theirsword');
  ask = askerOf(ours);
  before = await everythingOf(theirs.nurseryId);
}, 120_000);
afterAll(async () => {
  await server.close();
  await database.drop();
});

type Leaf = { path: (string | number)[]; value: string };

/** Every text in a body, with the way to it. */
const leavesOf = (value: unknown, path: (string | number)[] = []): Leaf[] => {
  if (typeof value === 'string') return [{ path, value }];
  if (Array.isArray(value)) return value.flatMap((each, at) => leavesOf(each, [...path, at]));
  return value === null || typeof value !== 'object'
    ? []
    : Object.entries(value).flatMap(([key, each]) => leavesOf(each, [...path, key]));
};

function withLeaf(body: unknown, [step, ...rest]: (string | number)[], value: string): unknown {
  if (step === undefined) return value;
  if (Array.isArray(body)) return body.map((each: unknown, at) => (at === step ? withLeaf(each, rest, value) : each));
  return { ...(body as object), [step]: withLeaf((body as Record<string, unknown>)[step], rest, value) };
}

/** Where a body names a row of ours, and which row of theirs is of the same sort. */
function namedRows(body: unknown): { path: (string | number)[]; key: string; theirId: string }[] {
  const keys = new Map(
    Object.entries(ourRows)
      .filter(([key]) => key.endsWith('Id'))
      .map(([key, id]) => [id, key as keyof SampleRows]),
  );
  return leavesOf(body).flatMap(({ path, value }) => {
    const key = keys.get(value);
    return key === undefined ? [] : [{ path, key, theirId: theirRows[key] }];
  });
}

const theirWords = () =>
  Object.entries(theirRows)
    .filter(([key]) => key.endsWith('Id') || key === 'mark')
    .map(([, word]) => word);

/** Their ids, codes and words that an answer shows although nobody asked with them. */
const shownOfTheirs = (answer: Answer, asked: unknown) =>
  theirWords().filter((word) => JSON.stringify(answer).includes(word) && !JSON.stringify(asked).includes(word));

/** Plants are taken from a place among those where they stand, so of any other it may be said that nothing of them is there. */
const codesFor = (field: unknown) =>
  field === 'placeId' || field === 'fromPlaceId' ? ['not-found', 'not-enough-units', 'nothing-there'] : ['not-found'];

const without = (answer: Answer, id: string) => JSON.parse(JSON.stringify(answer).replaceAll(id, 'that id')) as Answer;

describe.each(listed.map(({ path, operation }) => [path, operation] as const))('%s', (path, operation) => {
  const tried = (body: unknown) => ask(path, envelopeOf(operation, body, randomUUID()));

  it('does what a sample asks with rows of one’s own, though another nursery uses the same ids', async () => {
    const { nursery, rows } = await cloneNursery(server, { nurseryId: ours.nurseryId, rows: ourRows });
    const askThere = askerOf(nursery);
    const bodies = bodiesOf(path, withIdsOf(rows, theirRows));
    const answers: Answer[] = [];
    for (const body of bodies) answers.push(await askThere(path, envelopeOf(operation, body, randomUUID())));
    expect(answers.length).toBeGreaterThan(0);
    expect(answers.filter(({ ok }) => !ok)).toEqual([]);
    expect(answers.flatMap((answer) => shownOfTheirs(answer, bodies))).toEqual([]);
  });

  const named = () =>
    bodiesOf(path, withNewIds(ourRows)).flatMap((body) => namedRows(body).map((row) => ({ body, ...row })));

  it('answers for each id of another nursery as for one that nobody has', async () => {
    for (const { body, path: leaf, key, theirId } of named()) {
      const nobodysId = randomUUID();
      const answer = await tried(withLeaf(body, leaf, theirId));
      const nobodys = await tried(withLeaf(body, leaf, nobodysId));
      const at = leaf.join('.');
      expect({ at, key, answer: without(answer, theirId) }).toEqual({ at, key, answer: without(nobodys, nobodysId) });
      if (operation.kind === 'command') expect(codesFor(leaf.at(-1)), at).toContain(answer.ok ? 'done' : answer.code);
      expect({ at, shown: shownOfTheirs(answer, theirId) }).toEqual({ at, shown: [] });
    }
  });

  it('does nothing with a body in which all rows are another nursery’s', async () => {
    for (const body of bodiesOf(path, withNewIds(theirRows)).filter((each) =>
      leavesOf(each).some(({ value }) => theirWords().includes(value)),
    )) {
      const answer = await tried(body);
      if (operation.kind === 'command') expect(answer).toMatchObject({ ok: false, code: 'not-found' });
      expect(shownOfTheirs(answer, body)).toEqual([]);
    }
  });
});

it('after all that nothing of the other nursery has changed', async () => {
  expect(await everythingOf(theirs.nurseryId)).toBe(before);
});
