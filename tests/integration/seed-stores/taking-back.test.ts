import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { seedOf } from './seed.ts';

let database: TestDatabase;
let nursery: TestNursery;
let story: ReturnType<typeof seedOf>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  story = seedOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const lastOf = async (sourceId: string) => (await story.seed(sourceId)).movements[0]?.movementId ?? '';

describe('taking a booking back', () => {
  test('brings the seed back, and says so at the booking', async () => {
    const sourceId = await story.stored(40);
    const { movementId } = await story.take(sourceId, 15);
    await story.takeBack(movementId);
    const { gramsLeft, movements } = await story.seed(sourceId);
    expect(gramsLeft).toBe(40);
    expect(movements).toMatchObject([
      { movementId, takenBack: true, mine: false },
      { kind: 'cleaned', takenBack: false },
    ]);
  });

  test('of what came in takes it out of the store and of what was cleaned', async () => {
    const sourceId = await story.stored(40);
    const { movementId } = await story.receive(sourceId, 5);
    await story.takeBack(movementId);
    expect([
      await story.left(sourceId),
      (await story.read(sourceId)).cleanedGrams,
      (await story.seed(sourceId)).gramsIn,
    ]).toEqual([40, 40, 40]);
  });

  test('of a weighing restores what the books said', async () => {
    const sourceId = await story.stored(40);
    const { movementId } = await story.weigh(sourceId, 31.5);
    await story.takeBack(movementId ?? '');
    expect(await story.left(sourceId)).toBe(40);
  });

  test('works once', async () => {
    const { movementId } = await story.take(await story.stored(40), 15);
    await story.takeBack(movementId);
    expect(await refusalOf(story.takeBack(movementId))).toMatchObject({
      code: 'already-reversed',
      field: 'movementId',
    });
  });

  test('cannot itself be taken back', async () => {
    const sourceId = await story.stored(40);
    await story.takeBack((await story.take(sourceId, 15)).movementId);
    const [row] = await nursery.sql<{ id: string }>(
      `SELECT id FROM seed_movement WHERE nursery_id = $1 AND source_id = $2 AND kind = 'taken-back'`,
      [nursery.nurseryId, sourceId],
    );
    expect(await refusalOf(story.takeBack(row?.id ?? ''))).toMatchObject({ code: 'reversal-is-final' });
  });

  test('of what came in is refused once it has gone out again', async () => {
    const sourceId = await story.stored(40);
    await story.take(sourceId, 30);
    const first = (await story.seed(sourceId)).movements.find(({ kind }) => kind === 'cleaned')?.movementId ?? '';
    expect(await refusalOf(story.takeBack(first))).toMatchObject({
      code: 'seed-has-gone',
      data: { grams: 40, left: 10 },
    });
  });

  test("is a grower's where a colleague booked it, crew's where it was their own", async () => {
    const sourceId = await story.stored(40);
    const { movementId } = await nursery
      .as('grower')
      .sources.takeSeed(sent({ sourceId, reason: 'given' as const, grams: 3, happenedOn: '2026-05-20' }));
    expect((await refusalOf(story.takeBack(movementId))).code).toBe('not-allowed');
    await story.takeBack(movementId, 'grower');
    expect(await story.left(sourceId)).toBe(40);
  });
});

describe('seed that a batch used', () => {
  /** Fifty cells of the source, started with so much of its seed. */
  async function sow(sourceId: string, seedGrams: number) {
    const { plantId } = await story.read(sourceId);
    const containerId = await story.stock.addContainer({
      code: `plug-${randomUUID().slice(0, 8)}`,
      kind: 'tray',
      cells: 50,
    });
    const batchId = randomUUID();
    const { entryId } = await nursery.as().propagation.startBatch(
      sent({
        batchId,
        plantId,
        sourceId,
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId,
        units: 50,
        placeId: await story.stock.addPlace(),
        happenedOn: '2026-05-20',
        seedGrams,
      }),
    );
    return { batchId, entryId };
  }

  test('leaves the store and names the batch', async () => {
    const sourceId = await story.stored(40);
    const { batchId, entryId } = await sow(sourceId, 0.8);
    expect(await story.left(sourceId)).toBe(39.2);
    expect((await story.seed(sourceId)).movements[0]).toMatchObject({ kind: 'sown', grams: -0.8, batchId, entryId });
  });

  test('comes back with the entry that used it', async () => {
    const sourceId = await story.stored(40);
    const { entryId } = await sow(sourceId, 0.8);
    await nursery.as().stock.reverseEntry(sent({ entryId }));
    expect(await story.left(sourceId)).toBe(40);
    expect((await story.seed(sourceId)).movements[0]).toMatchObject({ kind: 'sown', takenBack: true });
  });

  test('comes back once, though the entry is asked back twice', async () => {
    const sourceId = await story.stored(40);
    const { entryId } = await sow(sourceId, 0.8);
    await nursery.as().stock.reverseEntry(sent({ entryId }));
    expect((await refusalOf(nursery.as().stock.reverseEntry(sent({ entryId })))).code).toBe('already-reversed');
    expect(await story.left(sourceId)).toBe(40);
  });

  test('comes back in no other way', async () => {
    const sourceId = await story.stored(40);
    await sow(sourceId, 0.8);
    expect(await refusalOf(story.takeBack(await lastOf(sourceId), 'grower'))).toMatchObject({
      code: 'seed-of-entry',
      data: { grams: 0.8 },
    });
  });

  test('is refused beyond what is left, and no batch is started', async () => {
    const sourceId = await story.stored(0.5);
    expect(await refusalOf(sow(sourceId, 0.8))).toMatchObject({
      code: 'more-seed-than-stored',
      field: 'seedGrams',
      data: { wanted: 0.8, left: 0.5 },
    });
    expect((await story.read(sourceId)).batches).toEqual([]);
  });

  test('is refused where nothing was ever weighed', async () => {
    expect(await refusalOf(sow(await story.add(), 0.8))).toMatchObject({ code: 'no-seed-stored', field: 'seedGrams' });
  });

  test('is booked as a milligram where a few fine seeds weigh less', async () => {
    const sourceId = await story.stored(1);
    await sow(sourceId, 0.00004);
    expect(await story.left(sourceId)).toBe(0.999);
  });

  test('races with what is taken by hand and never takes a store below nothing', async () => {
    const sourceId = await story.stored(10);
    const answers = await Promise.allSettled([sow(sourceId, 6), story.take(sourceId, 6)]);
    expect(answers.filter(({ status }) => status === 'fulfilled').length).toBe(1);
    expect(await story.left(sourceId)).toBe(4);
  });
});
