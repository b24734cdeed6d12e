import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const loss = (lotId: string, units: number) => ({ lotId, units, cause: 'rot' as const, happenedOn: '2026-05-20' });

describe('a command id', () => {
  test('takes effect once and answers the same when it is sent again', async () => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const message = sent(loss(lotId, 3));
    const first = await nursery.as('crew').stock.loseFromLot(message);
    expect(await nursery.as('crew').stock.loseFromLot(message)).toEqual(first);
    expect(await stock.unitsOf(lotId)).toBe(7);
  });

  test('takes effect once when it arrives twenty times at once', async () => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const message = sent(loss(lotId, 3));
    const answers = await Promise.all(Array.from({ length: 20 }, () => nursery.as('crew').stock.loseFromLot(message)));
    expect(new Set(answers.map(({ entryId }) => entryId)).size).toBe(1);
    expect(await stock.unitsOf(lotId)).toBe(7);
  });

  test.each([
    ['other content', (lotId: string) => loss(lotId, 4), 'crew' as const],
    ['another person', (lotId: string) => loss(lotId, 3), 'owner' as const],
  ])('is refused with %s', async (_, body, role) => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const message = sent(loss(lotId, 3));
    await nursery.as('crew').stock.loseFromLot(message);
    expect(await refusalOf(nursery.as(role).stock.loseFromLot(sent(body(lotId), message.commandId)))).toMatchObject({
      code: 'command-id-reused',
    });
    expect(await stock.unitsOf(lotId)).toBe(7);
  });

  test('of a refused command is free again for the mended entry', async () => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const commandId = randomUUID();
    expect(await refusalOf(nursery.as('crew').stock.loseFromLot(sent(loss(lotId, 30), commandId)))).toMatchObject({
      code: 'not-enough-units',
      field: 'units',
      data: { wanted: 30, available: 10 },
    });
    await nursery.as('crew').stock.loseFromLot(sent(loss(lotId, 10), commandId));
    expect(await stock.unitsOf(lotId)).toBe(0);
  });
});

describe('forty clients at one lot of ten', () => {
  test('take exactly ten, and the other thirty are told how many are left', async () => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const outcomes = await Promise.allSettled(
      Array.from({ length: 40 }, () => nursery.as('crew').stock.loseFromLot(sent(loss(lotId, 1)))),
    );
    const refused = outcomes.flatMap((outcome) =>
      outcome.status === 'rejected' ? [(outcome.reason as { message: string }).message] : [],
    );
    expect(outcomes.length - refused.length).toBe(10);
    expect(new Set(refused)).toEqual(new Set(['not-enough-units']));
    expect(await stock.unitsOf(lotId)).toBe(0);
    expect((await checkLaws(database.ownerUrl)).breaches).toEqual([]);
  });
});

describe('bad input', () => {
  test.each([
    ['no units', { units: 0 }, 'units', 'too-small'],
    ['fewer than no units', { units: -3 }, 'units', 'too-small'],
    ['a fraction of a plant', { units: 1.5 }, 'units', 'not-whole'],
    ['a word for a number', { units: 'many' }, 'units', 'not-a-number'],
    ['a day that does not exist', { happenedOn: '2026-02-30' }, 'happenedOn', 'not-a-date'],
    ['an unknown cause', { cause: 'boredom' }, 'cause', 'not-a-choice'],
    ['a field nobody knows', { colour: 'green' }, '', 'unknown-field'],
    ['no lot', { lotId: undefined }, 'lotId', 'required'],
    ['an id that is none', { lotId: "'; DROP TABLE lot; --" }, 'lotId', 'wrong-form'],
  ])('with %s is refused beside its field', async (_, change, field, problem) => {
    const { lotId } = await stock.addReadyLot({ units: 10 });
    const refusal = await refusalOf(
      nursery.as('crew').stock.loseFromLot(sent({ ...loss(lotId, 1), ...change } as ReturnType<typeof loss>)),
    );
    expect(refusal).toMatchObject({ code: 'invalid-input', data: { issues: [{ path: field, problem }] } });
    expect(await stock.unitsOf(lotId)).toBe(10);
  });

  test('with a day in the future names today', async () => {
    const { lotId } = await stock.addReadyLot();
    expect(
      await refusalOf(nursery.as('crew').stock.loseFromLot(sent({ ...loss(lotId, 1), happenedOn: '2026-05-21' }))),
    ).toEqual({ code: 'day-in-future', field: 'happenedOn', data: { day: '2026-05-21', today: '2026-05-20' } });
  });

  test('with a day before the lot was potted names the earliest', async () => {
    const { lotId } = await stock.addReadyLot({ pottedOn: '2026-04-14' });
    expect(
      await refusalOf(nursery.as('crew').stock.loseFromLot(sent({ ...loss(lotId, 1), happenedOn: '2026-04-13' }))),
    ).toMatchObject({ code: 'day-too-early', data: { earliest: '2026-04-14' } });
  });

  test("with another nursery's lot gets the answer of a lot that does not exist", async () => {
    const other = await openNursery(database);
    const { lotId } = await stockOf(other).addReadyLot();
    const theirs = await refusalOf(nursery.as('crew').stock.loseFromLot(sent(loss(lotId, 1))));
    expect(theirs).toEqual(await refusalOf(nursery.as('crew').stock.loseFromLot(sent(loss(randomUUID(), 1)))));
    expect(theirs).toMatchObject({ code: 'not-found', field: 'lotId' });
    await other.close();
  });
});

describe('the day of a nursery', () => {
  test('is the calendar day of its own zone, not of the server', async () => {
    const far = await openNursery(database, { zone: 'Pacific/Auckland', day: '2026-05-20' });
    const { nursery: there } = await far.as('viewer').people.me();
    expect(there.today).toBe('2026-05-21');
    await far.close();
  });

  test('is rolled once, before its first write', async () => {
    const { lotId } = await stock.addReadyLot();
    nursery.clock.set('2026-05-22');
    await nursery.as('crew').stock.loseFromLot(sent({ ...loss(lotId, 1), happenedOn: '2026-05-22' }));
    await nursery.as('crew').stock.loseFromLot(sent({ ...loss(lotId, 1), happenedOn: '2026-05-22' }));
    expect(
      await nursery.sql(
        `SELECT count(*)::int AS rolls FROM command WHERE nursery_id = $1 AND name = 'roll-day' AND recorded_at > '2026-05-22'`,
        [nursery.nurseryId],
      ),
    ).toEqual([{ rolls: 1 }]);
    nursery.clock.set('2026-05-20');
  });
});
