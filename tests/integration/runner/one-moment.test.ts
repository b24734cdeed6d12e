// A read is of one moment and writes nothing; a look ahead that fails fails nothing else.
import { randomUUID } from 'node:crypto';
import { addDays } from '@rootclock/domain';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import type { ForeseeRoll } from '../../../apps/server/src/db/writing/own-writes.ts';
import { openDatabase } from '../../../apps/server/src/db/pool.ts';
import { createRunner } from '../../../apps/server/src/db/runner.ts';
import { operations } from '../../../apps/server/src/features/operations.ts';
import { replan, rollDay } from '../../../apps/server/src/features/replan.ts';
import { errorAnswer } from '../../../apps/server/src/trpc/answer-error.ts';
import { query, type ReadContext } from '../../../apps/server/src/trpc/operation.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { FIRST_DAY, openNursery, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

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

const ask = <Answer>(read: (context: ReadContext) => Promise<Answer>) =>
  nursery.runner.read(
    query({ name: 'asked', input: operations.people.listPeople.input, roles: ['viewer'], read }),
    nursery.people.viewer,
    {},
  );

const unitsRow = z.strictObject({ units: z.number() });

describe('a read', () => {
  const unitsIn = async ({ tx, nurseryId }: ReadContext, lotId: string) => {
    const row = await tx.row(
      unitsRow,
    )`SELECT sum(units)::int AS units FROM account WHERE nursery_id = ${nurseryId}::uuid AND lot_id = ${lotId}::uuid AND kind = 'place'`;
    return row?.units;
  };

  it('of two statements answers of one moment, whatever is written between them', async () => {
    const { lotId } = await stockOf(nursery).addReadyLot({ units: 10 });
    const lose = () =>
      nursery.as('crew').stock.loseFromLot({
        commandId: randomUUID(),
        body: { lotId, units: 4, cause: 'rot', happenedOn: '2026-05-20' },
      });
    const seen = await ask(async (context) => {
      const before = await unitsIn(context, lotId);
      await lose();
      return [before, await unitsIn(context, lotId)];
    });
    expect(seen).toEqual([10, 10]);
    expect(await ask((context) => unitsIn(context, lotId))).toBe(6);
  });

  it.each([
    ['a row', (tx: ReadContext['tx']) => tx.run`UPDATE nursery SET name = 'written'`],
    [
      'the way of a command',
      (tx: ReadContext['tx']) => tx.run`SELECT * FROM begin_command(${nursery.nurseryId}::uuid, ${randomUUID()}::uuid)`,
    ],
    [
      'out of being read only',
      (tx: ReadContext['tx']) => tx.run`SELECT set_config('transaction_read_only', 'off', true)`,
    ],
  ])('that tries to write %s is refused by the database, and told as a fault of ours', async (_, write) => {
    const refused = await ask(({ tx }) => write(tx)).then(
      () => null,
      (error: unknown) => error,
    );
    expect(errorAnswer(refused, '').code).toBe('fault');
    expect(await nursery.sql(`SELECT name FROM nursery WHERE id = $1`, [nursery.nurseryId])).toEqual([
      { name: 'Test nursery' },
    ]);
  });
});

describe('a look ahead at the day’s roll', () => {
  let today = FIRST_DAY;
  it.each<[string, ForeseeRoll]>([
    ['throws while it reads', async () => Promise.reject(new Error('no such column'))],
    [
      'throws while it reckons',
      async () => async () => Promise.reject(new Error('the promises were not planned within 60 seconds')),
    ],
    [
      'reads for longer than a transaction may',
      async ({ tx }) => {
        for (;;) await tx.run`SELECT 1`;
      },
    ],
    [
      'spoils its own transaction',
      async ({ tx }) => {
        await tx.run`SELECT 1 / 0`;
        return async () => {};
      },
    ],
  ])('that %s leaves the write as it is', async (_, foreseeRoll) => {
    const { lotId } = await stockOf(nursery).addReadyLot({ units: 10 });
    const app = openDatabase(database.url, { connections: 2, patienceMs: 1500 });
    const failures: unknown[] = [];
    const runner = createRunner({
      database: app,
      replan,
      rollDay,
      foreseeRoll,
      clock: nursery.clock.now,
      lookAheadFailed: (error) => failures.push(error),
    });
    // Each case begins a day of its own.
    today = addDays(today, 1);
    nursery.clock.set(today);
    await runner.run(
      operations.stock.loseFromLot,
      nursery.people.crew,
      randomUUID(),
      { lotId, units: 4, cause: 'rot', happenedOn: '2026-05-20', note: '', confirmed: false },
      'hash',
    );
    expect(await stockOf(nursery).unitsOf(lotId)).toBe(6);
    expect(
      await nursery.sql('SELECT rolled_on::text AS "rolledOn" FROM nursery WHERE id = $1', [nursery.nurseryId]),
    ).toEqual([{ rolledOn: today }]);
    expect(failures).toHaveLength(1);
    await app.close();
  });
});
