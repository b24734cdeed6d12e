// Which commands change what stands in a row already, found by running each of them: such a command carries the edition at which the row was read, or
// the list says why it need not.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askerOf, listed } from '../../access/asking.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, type TestNursery } from '../../support/nursery.ts';
import { cloneNursery } from '../../support/sample-bodies/clone.ts';
import { addSampleRows, bodiesOf, type SampleRows, withNewIds } from '../../support/sample-bodies/index.ts';
import { NO_EDITION_NEEDED, NOT_TYPED } from './no-edition-needed.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let first: Omit<TestNursery, 'close'>;
let rows: SampleRows;
let tables: { name: string; key: string }[];
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database);
  first = await server.addNursery();
  rows = await addSampleRows(first, 'editword');
  tables = await server.sql(`
    SELECT c.relname AS name, string_agg(format('t.%I::text', a.attname), ' || ' || quote_literal('/') || ' || ' ORDER BY a.attnum) AS key
      FROM pg_class c JOIN pg_index i ON i.indrelid = c.oid AND i.indisprimary JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = ANY (i.indkey)
     WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND EXISTS (SELECT 1 FROM pg_attribute n WHERE n.attrelid = c.oid AND n.attname = 'nursery_id')
     GROUP BY c.relname`);
}, 120_000);
afterAll(async () => {
  await server.close();
  await database.drop();
});

type Stored = Map<string, Record<string, unknown>>;

/** Every row of a nursery under its table and key. */
async function everything(nurseryId: string): Promise<Stored> {
  const all = [
    ...tables.map(
      ({ name, key }) =>
        `SELECT '${name}' AS name, ${key} AS key, to_jsonb(t) AS row FROM ${name} t WHERE t.nursery_id = '${nurseryId}'`,
    ),
    `SELECT 'nursery', t.id::text, to_jsonb(t) FROM nursery t WHERE t.id = '${nurseryId}'`,
    `SELECT 'person', t.id::text, to_jsonb(t) FROM person t JOIN membership m ON m.person_id = t.id WHERE m.nursery_id = '${nurseryId}'`,
  ];
  const found = await server.sql<{ name: string; key: string; row: Record<string, unknown> }>(all.join(' UNION ALL '));
  return new Map(found.map(({ name, key, row }) => [`${name} ${key}`, row]));
}

/** The columns of rows that stood before and hold something else now, or whose row is gone, as `table.column`. */
function changed(before: Stored, after: Stored): Set<string> {
  const columns = new Set<string>();
  for (const [place, row] of before) {
    const table = place.split(' ')[0] ?? '';
    const now = after.get(place);
    for (const [column, value] of Object.entries(row))
      if (JSON.stringify(now?.[column]) !== JSON.stringify(value)) columns.add(`${table}.${now ? column : '*'}`);
  }
  return columns;
}

const commands = listed.filter(({ operation }) => operation.kind === 'command');
const carries = (path: string) =>
  commands.some(
    (each) => each.path === path && each.operation.kind === 'command' && each.operation.edits !== undefined,
  );
const typedBy = new Map<string, string[]>();

describe.each(commands.map(({ path }) => [path]))('%s', (path) => {
  it('carries the edition of the row that it changes, or is listed with why it need not', async () => {
    const { nursery, rows: own } = await cloneNursery(server, { nurseryId: first.nurseryId, rows });
    const ask = askerOf(nursery);
    // The day's roll comes first, so that what it changes is not taken for the command's doing.
    expect(
      await ask('plants.addContainer', {
        commandId: randomUUID(),
        body: {
          containerId: randomUUID(),
          code: 'first',
          kind: 'pot',
          name: 'First',
          volumeMl: null,
          depthMm: null,
          widthMm: null,
          lengthMm: null,
          cells: null,
          tradeClass: null,
          note: '',
        },
      }),
    ).toMatchObject({ ok: true });
    const before = await everything(nursery.nurseryId);
    for (const body of bodiesOf(path, withNewIds(own)))
      expect(await ask(path, { commandId: randomUUID(), body })).toMatchObject({ ok: true });
    const typed = [...changed(before, await everything(nursery.nurseryId))].filter(
      (column) => !Object.hasOwn(NOT_TYPED, column) && !Object.hasOwn(NOT_TYPED, column.replace(/\..*/, '.*')),
    );
    typedBy.set(path, typed);
    if (!carries(path) && !Object.hasOwn(NO_EDITION_NEEDED, path)) expect({ path, typed }).toEqual({ path, typed: [] });
  });
});

const SOUNDS_SO = /\.(edit|change|revise|set|rename|correct|reverse)/;

it('lists nothing that carries an edition, is no command, or neither changes anything nor sounds so', () => {
  expect(
    Object.keys(NO_EDITION_NEEDED).filter(
      (path) => carries(path) || ((typedBy.get(path) ?? []).length === 0 && !SOUNDS_SO.test(path)),
    ),
  ).toEqual([]);
});

it('has a decision for every command that is called after a change', () => {
  const named = commands.map(({ path }) => path).filter((path) => SOUNDS_SO.test(path));
  expect(named).not.toEqual([]);
  expect(named.filter((path) => !carries(path) && !Object.hasOwn(NO_EDITION_NEEDED, path))).toEqual([]);
});
