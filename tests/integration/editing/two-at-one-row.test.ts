import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Answer, askerOf, listed } from '../../access/asking.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, type TestNursery } from '../../support/nursery.ts';
import { cloneNursery } from '../../support/sample-bodies/clone.ts';
import { twoEdits } from '../../support/sample-bodies/edits.ts';
import { addSampleRows, bodiesOf, type SampleRows, withNewIds } from '../../support/sample-bodies/index.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let first: Omit<TestNursery, 'close'>;
let rows: SampleRows;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  first = await server.addNursery();
  rows = await addSampleRows(first, 'editword');
}, 120_000);
afterAll(async () => {
  await server.close();
  await database.drop();
});

type Body = Record<string, unknown>;
const editionOf = (answer: Answer) => (answer.ok ? (answer.answer as { edition: number }).edition : Number.NaN);

/** A nursery of its own in which one form was saved, and how to save it again: by the owner, who is A, and by a second owner, who is B. */
async function openForm(path: string, start: Body = {}) {
  const { nursery, rows: own } = await cloneNursery(server, { nurseryId: first.nurseryId, rows });
  const ask = askerOf(nursery);
  const [sample] = bodiesOf(path, withNewIds(own)) as Body[];
  const body: Body = { ...sample, ...start };
  const save = (change: Body, read: Body, commandId = randomUUID()) =>
    ask(path, { commandId, body: { ...body, ...change, ...read } });
  const edition = editionOf(await save({}, {}));
  const everything = async () => {
    const [row] = await server.sql<{ stored: string }>(
      `SELECT version || ' ' || (SELECT count(*) FROM command c WHERE c.nursery_id = n.id) AS stored FROM nursery n WHERE id = $1`,
      [nursery.nurseryId],
    );
    return row?.stored;
  };
  const was = (change: Body) => Object.fromEntries(Object.keys(change).map((field) => [field, body[field] ?? null]));
  /** As if somebody else of the nursery had saved last: some commands are the owner's alone, and there is one owner. */
  const byAnother = () =>
    server.sql(`BEGIN; SET LOCAL session_replication_role = replica;
    UPDATE command SET person_id = '${nursery.people.viewer.personId}' WHERE nursery_id = '${nursery.nurseryId}'; COMMIT;`);
  return { save, edition, everything, was, byAnother };
}

it('knows two edits of one row for every command that edits in place', () => {
  const editing = listed
    .filter(({ operation }) => operation.kind === 'command' && operation.edits !== undefined)
    .map(({ path }) => path);
  expect(Object.keys(twoEdits).sort()).toEqual(editing.filter((path) => path !== 'stock.openPlace').sort());
});

describe.each(Object.entries(twoEdits))('%s', (path, { first: start, theirs, mine }) => {
  const [field = ''] = Object.keys(mine);

  it('refuses what was typed over a row that somebody changed meanwhile, with both values, and passes when it is meant', async () => {
    const { save, edition, everything } = await openForm(path, start);
    const saved = await save(theirs, { edition });
    expect(editionOf(saved)).toBeGreaterThan(edition);
    const before = await everything();
    const refused = await save(mine, { edition });
    expect(refused).toMatchObject({
      ok: false,
      code: 'edited-meanwhile',
      data: {
        edition: editionOf(saved),
        by: 'Test owner',
        fields: [{ field, stored: theirs[field], sent: mine[field] }],
        stored: theirs,
      },
    });
    expect(await everything()).toBe(before);
    const again = await save(mine, { edition: editionOf(saved) });
    expect(editionOf(again)).toBeGreaterThan(editionOf(saved));
    expect(await save(theirs, { edition: editionOf(saved) })).toMatchObject({
      data: { fields: [{ field, stored: mine[field], sent: theirs[field] }] },
    });
  });

  it('counts an entry that names no edition as typed over a row that nobody else had edited', async () => {
    const { save, edition, byAnother } = await openForm(path, start);
    expect(await save(theirs, { edition })).toMatchObject({ ok: true });
    expect(await save(mine, {})).toMatchObject({ ok: true });
    await byAnother();
    expect(await save(theirs, {})).toMatchObject({ ok: false, code: 'edited-meanwhile', data: { by: 'Test viewer' } });
  });

  it('is no clash with itself when it is sent twice, nor with somebody who typed the same', async () => {
    const { save, edition } = await openForm(path, start);
    const commandId = randomUUID();
    const saved = await save(mine, { edition }, commandId);
    expect(await save(mine, { edition }, commandId)).toEqual(saved);
    expect(await save(mine, { edition })).toMatchObject({ ok: true, answer: { edition: editionOf(saved) } });
  });
});

/** Of a form that has more than one field. */
const ofSeveralFields = Object.entries(twoEdits).flatMap(([path, { apart, first: start, mine }]) =>
  apart ? [{ path, apart, start, mine }] : [],
);

describe.each(ofSeveralFields)('$path', ({ path, apart: other, start, mine }) => {
  it('keeps both edits where they are of different fields', async () => {
    const { save, edition, was, everything } = await openForm(path, start);
    const saved = await save(other, { edition });
    // As the form read it, the other field still holds what it held before.
    const mixed = await save(mine, { edition, was: was(mine) });
    expect(mixed).toMatchObject({ ok: true });
    const settled = await everything();
    // Whoever sends exactly what both made of it changes nothing.
    expect(await save({ ...other, ...mine }, { edition: editionOf(saved) })).toMatchObject({
      ok: true,
      answer: { edition: editionOf(mixed) },
    });
    expect(await everything()).not.toBe(settled);
  });
});
