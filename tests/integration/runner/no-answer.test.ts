// What a person is told when the database fails: "asked again" where nobody knows or it could not just then, a fault where we erred.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { raw } from '../../../apps/server/src/db/sql.ts';
import { createApp } from '../../../apps/server/src/app.ts';
import { openDatabase, type Database, type Tx } from '../../../apps/server/src/db/pool.ts';
import { Refusal } from '../../../apps/server/src/refusal.ts';
import { errorAnswer } from '../../../apps/server/src/trpc/answer-error.ts';
import { openLine } from '../../support/process/cut-line.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

const pidRow = z.strictObject({ pid: z.number() });

let database: TestDatabase;
let nursery: TestNursery;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const codeOf = async (work: Promise<unknown>) =>
  work.then(
    () => 'done',
    (error: unknown) => errorAnswer(error, '').code,
  );
const within = (app: Database, work: (tx: Tx) => Promise<unknown>) => codeOf(app.transaction(work));

describe('what PostgreSQL answers is told as', () => {
  test.each([
    ['08006', 'outcome-unknown'],
    ['25006', 'outcome-unknown'],
    ['25P03', 'outcome-unknown'],
    ['25P04', 'outcome-unknown'],
    ['26000', 'outcome-unknown'],
    ['40001', 'outcome-unknown'],
    ['40P01', 'outcome-unknown'],
    ['53100', 'outcome-unknown'],
    ['53200', 'outcome-unknown'],
    ['53300', 'outcome-unknown'],
    ['55P03', 'outcome-unknown'],
    ['57014', 'outcome-unknown'],
    ['57P01', 'outcome-unknown'],
    ['57P03', 'outcome-unknown'],
    ['57P05', 'outcome-unknown'],
    ['58000', 'outcome-unknown'],
    ['58030', 'outcome-unknown'],
    ['58P01', 'outcome-unknown'],
    ['XX000', 'outcome-unknown'],
    ['22003', 'invalid-input'],
    ['22P02', 'invalid-input'],
    ['23503', 'not-found'],
    ['23505', 'id-taken'],
    ['0A000', 'fault'],
    ['22012', 'fault'],
    ['23502', 'fault'],
    ['23514', 'fault'],
    ['25P02', 'fault'],
    ['28P01', 'fault'],
    ['3D000', 'fault'],
    ['42501', 'fault'],
    ['42601', 'fault'],
    ['42703', 'fault'],
    ['42P01', 'fault'],
    ['55000', 'fault'],
    ['P0001', 'fault'],
    ['XX001', 'fault'],
  ])('%s is told as %s', async (sqlState, told) => {
    expect(
      await within(nursery.app, (tx) =>
        tx.run(raw(`DO $$ BEGIN RAISE EXCEPTION 'as asked' USING ERRCODE = '${sqlState}'; END $$`)),
      ),
    ).toBe(told);
  });
});

describe('a mistake of the program is a fault', () => {
  test.each<[string, (tx: Tx) => Promise<unknown>]>([
    ['a column that does not exist', (tx) => tx.run`SELECT nothing FROM nursery`],
    ['a value that cannot be written', (tx) => tx.run`SELECT ${new Date('no day')}::timestamptz`],
    ['a slip in the command itself', async () => (undefined as unknown as string[]).length],
    ['a failure thrown by hand', async () => Promise.reject(new Error('Connection terminated'))],
  ])('%s', async (_, work) => {
    expect(await within(nursery.app, work)).toBe('fault');
  });
});

describe('a connection on which something failed', () => {
  const textRow = z.strictObject({ text: z.string() });
  /** The same statement each time, since the driver gives each a name that it knows again. */
  const textOf = (tx: Tx, value: unknown) => tx.row(textRow)`SELECT (${value}::jsonb)::text AS text`;
  const endless: Record<string, unknown> = {};
  endless['itself'] = endless;

  test.each<[string, (app: Database) => Promise<unknown>]>([
    ['a value that cannot be written', (app) => textOf(app, endless)],
    ['a value that cannot be written, within a transaction', (app) => app.transaction((tx) => textOf(tx, endless))],
    ['a statement that PostgreSQL refuses', (app) => app.run`SELECT nothing FROM nursery`],
  ])('answers the next one: %s', async (_, fail) => {
    const app = openDatabase(database.url, { connections: 1 });
    expect(await codeOf(fail(app))).toBe('fault');
    expect(await textOf(app, { day: 1 })).toEqual({ text: '{"day": 1}' });
    await app.close();
  });
});

describe('nobody knows the outcome', () => {
  test('when the connection was ended between two statements', async () => {
    expect(
      await within(nursery.app, async (tx) => {
        const mine = await tx.row(pidRow)`SELECT pg_backend_pid() AS pid`;
        await nursery.sql('SELECT pg_terminate_backend($1)', [mine?.pid]);
        await expect.poll(() => nursery.sql('SELECT 1 FROM pg_stat_activity WHERE pid = $1', [mine?.pid])).toEqual([]);
        await tx.run`SELECT 1`;
      }),
    ).toBe('outcome-unknown');
  });

  test.each([
    ['the connection was ended', 'pg_terminate_backend'],
    ['it was called off', 'pg_cancel_backend'],
  ])('when in the midst of a statement %s', async (_, end) => {
    await nursery.sql('SELECT pg_advisory_lock(1)');
    const told = within(nursery.app, (tx) => tx.run`SELECT pg_advisory_xact_lock(1)`);
    const waiting = `SELECT pid FROM pg_stat_activity WHERE datname = current_database() AND wait_event = 'advisory'`;
    await expect.poll(() => nursery.sql(waiting)).toHaveLength(1);
    await nursery.sql(`SELECT ${end}(pid) FROM (${waiting}) w`);
    expect(await told).toBe('outcome-unknown');
    await nursery.sql('SELECT pg_advisory_unlock(1)');
  });

  test('when a transaction took longer than it may', async () => {
    const app = openDatabase(database.url, { connections: 1, patienceMs: 50 });
    expect(
      await within(app, async (tx) => {
        for (;;) await tx.run`SELECT 1`;
      }),
    ).toBe('outcome-unknown');
    await app.close();
  });

  test('when the database says nothing any more, be it asked within a transaction, without one, or to undo one', async () => {
    const line = await openLine(database.url);
    const app = openDatabase(line.url, { connections: 1, patienceMs: 1_000 });
    const isSilent = () => line.behave('hangs');
    const isBack = () => line.behave('passes');
    expect(
      await within(app, async (tx) => {
        isSilent();
        await tx.run`SELECT 1`;
      }),
    ).toBe('outcome-unknown');
    isBack();
    expect(await codeOf(app.run`SELECT 1`)).toBe('done');
    isSilent();
    expect(await codeOf(app.run`SELECT 1`)).toBe('outcome-unknown');
    isBack();
    expect(
      await within(app, async (tx) => {
        await tx.run`SELECT 1`;
        isSilent();
        throw new Refusal('wrong-sign-in');
      }),
    ).toBe('wrong-sign-in');
    isBack();
    expect(await codeOf(app.run`SELECT 1`)).toBe('done');
    await app.close();
    await line.close();
  });

  test('when no connection became free in time', async () => {
    const app = openDatabase(database.url, { connections: 1, waitMs: 2_000 });
    await nursery.sql('SELECT pg_advisory_lock(1)');
    const before = codeOf(app.run`SELECT pg_advisory_xact_lock(1)::text`);
    await expect
      .poll(() =>
        nursery.sql(`SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND wait_event = 'advisory'`),
      )
      .toHaveLength(1);
    expect(await within(app, (tx) => tx.run`SELECT 1`)).toBe('outcome-unknown');
    await nursery.sql('SELECT pg_advisory_unlock(1)');
    expect(await before).toBe('done');
    await app.close();
  });

  test('when the server is stopped in the midst of it', async () => {
    const app = openDatabase(database.url);
    expect(
      await within(app, async (tx) => {
        await tx.run`SELECT 1`;
        await app.close();
        await tx.run`SELECT 1`;
      }),
    ).toBe('outcome-unknown');
  });

  test('when the database cannot be reached', async () => {
    const line = await openLine(database.url);
    await line.close();
    const app = openDatabase(line.url);
    expect(await within(app, (tx) => tx.run`SELECT 1`)).toBe('outcome-unknown');
    expect(await codeOf(app.run`SELECT 1`)).toBe('outcome-unknown');
    await app.close();
  });

  test('when the line broke before it is even known who asks, with a status that says so', async () => {
    const line = await openLine(database.url);
    const app = await createApp({ databaseUrl: line.url });
    await app.ready();
    await line.close();
    const response = await app.inject({
      method: 'GET',
      url: '/trpc/people.me?input=%7B%7D',
      cookies: { rootclock_session: 'of somebody' },
    });
    expect({
      status: response.statusCode,
      code: response.json<{ error: { data: { code: string } } }>().error.data.code,
    }).toEqual({ status: 503, code: 'outcome-unknown' });
    await app.close();
  });
});

describe('a line that breaks at any packet of a command', () => {
  test.each([
    ['before it is sent', false],
    ['after it is sent', true],
  ])('%s leaves the outcome unknown, and the command takes effect once', async (_, isSent) => {
    const units = 1000;
    const { lotId } = await stockOf(nursery).addReadyLot({ units });
    const line = await openLine(database.url);
    const far = await openServer({ ...database, url: line.url });
    // The people are those of the nursery that has the lot; the connections go over the line.
    const server = far.serve(nursery.people);
    let commands = 0;
    for (let atPacket = 1; ; atPacket += 1) {
      const message = sent({ lotId, units: 1, cause: 'rot' as const, happenedOn: '2026-05-20' });
      line.cut();
      line.breakAt({ atPacket, isSent });
      const code = await codeOf(server('crew').stock.loseFromLot(message));
      commands += 1;
      if (!line.isBroken() && code === 'done') break;
      expect({ atPacket, code }).toEqual({ atPacket, code: 'outcome-unknown' });
      expect(await codeOf(nursery.as('crew').stock.loseFromLot(message))).toBe('done');
    }
    // Saying who we are, a transaction begun and ended, and the statements between: a break after a packet or two would prove little.
    expect(commands).toBeGreaterThan(10);
    expect(await stockOf(nursery).unitsOf(lotId)).toBe(units - commands);
    await far.close();
    await line.close();
  });
});
