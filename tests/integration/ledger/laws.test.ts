import { randomUUID } from 'node:crypto';
import { DATA_LAWS } from '@rootclock/domain';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let server: pg.Client;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  server = new pg.Client({ connectionString: database.url, options: '-c role=rootclock_app' });
  await server.connect();
});
afterAll(async () => {
  await server.end();
  await nursery.close();
  await database.drop();
});

const lose = (lotId: string, units = 1) =>
  nursery.as('crew').stock.loseFromLot(sent({ lotId, units, cause: 'rot', happenedOn: '2026-05-20' }));

const weighIn = (sourceId: string, grams: number) =>
  nursery.as('crew').sources.receiveSeed(sent({ sourceId, kind: 'bought', grams, happenedOn: '2026-05-20' }));

/** As the server speaks: in a transaction that is set to one nursery. */
async function asServer(nurseryId: string, text: string, values: unknown[] = []) {
  await server.query('BEGIN');
  try {
    await server.query(`SELECT set_config('app.nursery', $1, true)`, [nurseryId]);
    return (await server.query(text, values)).rows;
  } finally {
    await server.query('ROLLBACK');
  }
}

describe('the database itself', () => {
  test.each(['movement', 'entry', 'command', 'seed_movement'])(
    'refuses to change, delete or empty %s, even for its owner',
    async (table) => {
      const { lotId, sourceId } = await stock.addReadyLot();
      await lose(lotId);
      await weighIn(sourceId, 10);
      for (const statement of [
        `UPDATE ${table} SET nursery_id = nursery_id`,
        `DELETE FROM ${table}`,
        `TRUNCATE ${table} CASCADE`,
      ]) {
        await expect(nursery.sql(statement)).rejects.toThrow('append-only');
      }
    },
  );

  test('lets the server write no balance', async () => {
    await expect(asServer(nursery.nurseryId, 'UPDATE account SET units = 99')).rejects.toThrow('permission denied');
    await expect(
      asServer(
        nursery.nurseryId,
        `INSERT INTO account (nursery_id, id, kind, outside, units) VALUES ($1, $2, 'outside', 'lost', 5)`,
        [nursery.nurseryId, randomUUID()],
      ),
    ).rejects.toThrow('permission denied');
  });

  test('lets the server write no weight of seed', async () => {
    const { sourceId } = await stock.addReadyLot();
    await weighIn(sourceId, 10);
    await expect(asServer(nursery.nurseryId, 'UPDATE seed_store SET grams = 99')).rejects.toThrow('permission denied');
    await expect(
      asServer(nursery.nurseryId, 'INSERT INTO seed_store (nursery_id, source_id, grams) VALUES ($1, $2, 5)', [
        nursery.nurseryId,
        sourceId,
      ]),
    ).rejects.toThrow('permission denied');
    await expect(asServer(nursery.nurseryId, 'DELETE FROM seed_store')).rejects.toThrow('permission denied');
  });

  test('refuses seed that takes a store below nothing', async () => {
    const { sourceId } = await stock.addReadyLot();
    const { movementId } = await weighIn(sourceId, 10);
    await expect(
      nursery.sql(
        `INSERT INTO seed_movement (nursery_id, id, source_id, kind, grams, happened_on, recorded_at, command_id)
      SELECT nursery_id, gen_random_uuid(), source_id, 'given', -10.001, happened_on, recorded_at, command_id FROM seed_movement WHERE id = $1`,
        [movementId],
      ),
    ).rejects.toThrow('seed_not_negative');
  });

  test('refuses a movement that takes more than the account holds', async () => {
    const { lotId, placeId } = await stock.addReadyLot({ units: 4 });
    const { entryId } = await lose(lotId);
    await expect(
      nursery.sql(
        `INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
      VALUES ($1, $2, 9, account_key('place', $3, $4), account_key('outside', 'outside', 'lost'), 4, 4)`,
        [nursery.nurseryId, entryId, lotId, placeId],
      ),
    ).rejects.toThrow('account_units_check');
  });

  test.each([
    ['units_leave_lawfully', 'started', 1, 1],
    ['units_equal_on_both_sides', 'lost', 2, 1],
  ])('refuses a movement that breaks %s', async (law, exit, fromUnits, toUnits) => {
    const { lotId, placeId } = await stock.addReadyLot();
    const { entryId } = await lose(lotId);
    await nursery.sql(
      `INSERT INTO account (nursery_id, id, kind, outside) VALUES ($1, account_key('outside', 'outside', $2), 'outside', $2) ON CONFLICT DO NOTHING`,
      [nursery.nurseryId, exit],
    );
    await expect(
      nursery.sql(
        `INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
      VALUES ($1, $2, 9, account_key('place', $3, $4), account_key('outside', 'outside', $5), $6, $7)`,
        [nursery.nurseryId, entryId, lotId, placeId, exit, fromUnits, toUnits],
      ),
    ).rejects.toThrow(law);
  });

  test('shows one nursery nothing of another, whatever the query forgets', async () => {
    const other = await openNursery(database);
    const { lotId } = await stockOf(other).addReadyLot();
    expect(await asServer(nursery.nurseryId, 'SELECT id FROM lot WHERE id = $1', [lotId])).toEqual([]);
    expect(await asServer(other.nurseryId, 'SELECT id FROM lot')).toEqual([{ id: lotId }]);
    await other.close();
  });

  test('shows nothing at all while no nursery is set', async () => {
    expect((await server.query('SELECT count(*)::int AS lots FROM lot')).rows).toEqual([{ lots: 0 }]);
  });

  test("refuses a row under another nursery's name", async () => {
    await expect(
      asServer(
        nursery.nurseryId,
        `INSERT INTO place (nursery_id, id, code, name, kind) VALUES ($1, $2, 'X', 'X', 'bench')`,
        [randomUUID(), randomUUID()],
      ),
    ).rejects.toThrow('row-level security');
  });

  test("keeps people and tokens out of the server's direct reach", async () => {
    for (const table of ['person', 'membership', 'token', 'sign_in_pace'])
      await expect(asServer(nursery.nurseryId, `SELECT * FROM ${table}`)).rejects.toThrow('permission denied');
  });
});

describe('the check of all laws', () => {
  test('finds nothing wrong after ordinary work', async () => {
    const report = await checkLaws(database.ownerUrl);
    expect(report.breaches).toEqual([]);
    expect(report.looked.movements).toBeGreaterThan(0);
    expect(report.laws).toEqual(Object.keys(DATA_LAWS));
  });

  test('names a balance that was written past the ledger', async () => {
    const { lotId } = await stock.addReadyLot();
    await nursery.sql('UPDATE account SET units = units + 1 WHERE lot_id = $1', [lotId]);
    const { breaches } = await checkLaws(database.ownerUrl);
    expect(breaches).toEqual([
      { law: 'balance-is-sum', nursery: nursery.nurseryId, what: expect.stringContaining(lotId) },
    ]);
    await nursery.sql('UPDATE account SET units = units - 1 WHERE lot_id = $1', [lotId]);
  });

  test('names a lineage that the movements do not tell', async () => {
    const [a, b] = [
      await stock.addReadyLotOf('Liatris aspera', 'LIAS'),
      await stock.addReadyLotOf('Liatris pycnostachya', 'LIPY'),
    ];
    await nursery.sql(
      `INSERT INTO lineage (nursery_id, child_lot_id, parent_id, parent_kind) VALUES ($1, $2, $3, 'lot'), ($1, $3, $2, 'lot')`,
      [nursery.nurseryId, a, b],
    );
    const { breaches } = await checkLaws(database.ownerUrl);
    expect(new Set(breaches.map(({ law }) => law))).toEqual(new Set(['lineage-follows-movements', 'lineage-acyclic']));
  });

  test('names a store of seed that was written past its movements', async () => {
    const { sourceId } = await stock.addReadyLot();
    await weighIn(sourceId, 10);
    await nursery.sql('UPDATE seed_store SET grams = grams + 0.001 WHERE source_id = $1', [sourceId]);
    const { breaches } = await checkLaws(database.ownerUrl);
    await nursery.sql('UPDATE seed_store SET grams = grams - 0.001 WHERE source_id = $1', [sourceId]);
    expect(breaches).toContainEqual({
      law: 'seed-store-is-sum',
      nursery: nursery.nurseryId,
      what: `the store of source ${sourceId} holds 10.001 g, its movements make 10.000 g`,
    });
  });

  test('names seed that was taken back with less than was booked', async () => {
    const { sourceId } = await stock.addReadyLot();
    const { movementId } = await weighIn(sourceId, 10);
    await nursery.sql(
      `INSERT INTO seed_movement (nursery_id, id, source_id, kind, grams, happened_on, recorded_at, command_id, reverses_id)
      SELECT nursery_id, gen_random_uuid(), source_id, 'taken-back', -9, happened_on, recorded_at, command_id, id FROM seed_movement WHERE id = $1`,
      [movementId],
    );
    const { breaches } = await checkLaws(database.ownerUrl);
    expect(breaches).toContainEqual({
      law: 'seed-taken-back-once',
      nursery: nursery.nurseryId,
      what: expect.stringContaining(movementId),
    });
  });

  test('names sources that are blended of each other', async () => {
    const [a, b] = [await stock.addReadyLot(), await stock.addReadyLot()];
    await nursery.sql(
      'INSERT INTO source_part (nursery_id, source_id, part_source_id, grams) VALUES ($1, $2, $3, 1), ($1, $3, $2, 1)',
      [nursery.nurseryId, a.sourceId, b.sourceId],
    );
    const { breaches } = await checkLaws(database.ownerUrl);
    expect(breaches).toContainEqual({
      law: 'blends-acyclic',
      nursery: nursery.nurseryId,
      what: `source ${a.sourceId} is blended of itself`,
    });
  });

  test('names a table that was taken out of row security', async () => {
    await nursery.sql('ALTER TABLE place DISABLE ROW LEVEL SECURITY');
    const { breaches } = await checkLaws(database.ownerUrl);
    await nursery.sql('ALTER TABLE place ENABLE ROW LEVEL SECURITY');
    expect(breaches).toContainEqual({ law: 'nursery-apart', nursery: null, what: 'place is not under row security' });
  });

  test('names a number that a command is missing from', async () => {
    await nursery.sql('UPDATE nursery SET version = version + 1 WHERE id = $1', [nursery.nurseryId]);
    const { breaches } = await checkLaws(database.ownerUrl);
    expect(breaches.map(({ law }) => law)).toContain('command-once');
  });
});
