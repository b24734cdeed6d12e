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

describe('a new collection', () => {
  test('has its clean seed in the store at once', async () => {
    const sourceId = await story.add({
      rawGrams: 340,
      cleanedGrams: 62.5,
      purity: 0.94,
      seedsPerGram: 145,
      storage: 'cold-dry',
      storedOn: '2026-05-02',
    });
    expect(await story.read(sourceId)).toMatchObject({
      rawGrams: 340,
      cleanedGrams: 62.5,
      purity: 0.94,
      seedsPerGram: 145,
      storage: 'cold-dry',
      storedOn: '2026-05-02',
    });
    expect(await story.seed(sourceId)).toMatchObject({
      gramsLeft: 62.5,
      gramsIn: 62.5,
      movements: [{ kind: 'cleaned', grams: 62.5, happenedOn: '2026-05-02' }],
    });
  });

  test('that was bought came in as bought', async () => {
    const sourceId = await story.add({ kind: 'bought-seed', cleanedGrams: 28 });
    expect((await story.seed(sourceId)).movements).toMatchObject([
      { kind: 'bought', grams: 28, happenedOn: '2026-05-20' },
    ]);
  });

  test('of which nothing was weighed has no grams left rather than none', async () => {
    expect(await story.left(await story.add())).toBeNull();
  });

  test('cannot have more clean seed than it had raw', async () => {
    expect(await refusalOf(story.add({ rawGrams: 10, cleanedGrams: 12 }))).toEqual({
      code: 'cleaned-over-raw',
      field: 'cleanedGrams',
      data: { raw: 10, cleaned: 12 },
    });
  });

  test('cannot be purer than pure', async () => {
    expect(await refusalOf(story.add({ purity: 1.01 }))).toMatchObject({
      code: 'invalid-input',
      field: 'purity',
      data: { issues: [{ path: 'purity', problem: 'not-a-purity' }] },
    });
  });

  test('cannot be stored before it was gathered', async () => {
    expect(await refusalOf(story.add({ gathered: '2025-09', storedOn: '2025-08-31' }))).toEqual({
      code: 'day-too-early',
      field: 'storedOn',
      data: { day: '2025-08-31', earliest: '2025-09-01' },
    });
  });

  test('cannot be stored in days to come', async () => {
    expect(await refusalOf(story.add({ storedOn: '2026-05-21' }))).toMatchObject({
      code: 'day-in-future',
      field: 'storedOn',
    });
  });

  test('of mother plants keeps nothing of seed, whatever the form still carried', async () => {
    const { lotId, plantId } = await story.stock.addReadyLot();
    const sourceId = await story.add({
      plantId,
      kind: 'mother-plants',
      motherLotId: lotId,
      cleanedGrams: 12,
      purity: 0.9,
    });
    expect(await story.read(sourceId)).toMatchObject({ seed: null, cleanedGrams: null, purity: null });
  });
});

describe('editing a source', () => {
  test('leaves what lies in its store', async () => {
    const sourceId = await story.stored(40);
    await nursery.as().sources.editSource(sent({ sourceId, kind: 'bought-seed', purity: 0.8 }));
    expect(await story.seed(sourceId)).toMatchObject({ gramsLeft: 40, purity: 0.8 });
  });

  test('does not make it one without seed while seed of it is in the store', async () => {
    const sourceId = await story.stored(40);
    expect(await refusalOf(nursery.as().sources.editSource(sent({ sourceId, kind: 'in-ground-bed' })))).toMatchObject({
      code: 'source-has-seed',
      field: 'kind',
      data: { left: 40 },
    });
  });
});

describe('putting seed in', () => {
  test('adds it to the store and to what was cleaned', async () => {
    const sourceId = await story.stored(40);
    await story.receive(sourceId, 2.125);
    expect(await story.left(sourceId)).toBe(42.125);
    expect((await story.read(sourceId)).cleanedGrams).toBe(42.125);
  });

  test('begins its storage where nobody had said when', async () => {
    const sourceId = await story.add();
    await story.receive(sourceId, 5, { happenedOn: '2026-05-12' });
    expect((await story.read(sourceId)).storedOn).toBe('2026-05-12');
  });

  test('cannot bring in more clean seed than was gathered raw', async () => {
    const sourceId = await story.stored(40, { rawGrams: 50 });
    expect(await refusalOf(story.receive(sourceId, 10.001))).toEqual({
      code: 'cleaned-over-raw',
      field: 'grams',
      data: { raw: 50, cleaned: 50.001 },
    });
  });

  test('is refused in days to come and before it was gathered', async () => {
    const sourceId = await story.add({ gathered: '2026-04-02' });
    expect(await refusalOf(story.receive(sourceId, 5, { happenedOn: '2026-05-21' }))).toMatchObject({
      code: 'day-in-future',
      field: 'happenedOn',
    });
    expect(await refusalOf(story.receive(sourceId, 5, { happenedOn: '2026-04-01' }))).toMatchObject({
      code: 'day-too-early',
      field: 'happenedOn',
      data: { earliest: '2026-04-02' },
    });
  });

  test('is refused for plants and beds', async () => {
    const bed = await story.add({ kind: 'in-ground-bed' });
    expect(await refusalOf(story.receive(bed, 5))).toMatchObject({
      code: 'source-holds-no-seed',
      field: 'sourceId',
      data: { kind: 'in-ground-bed' },
    });
  });

  test('is refused for a retired source', async () => {
    const sourceId = await story.add();
    await nursery.as().sources.retireSource(sent({ sourceId }));
    expect(await refusalOf(story.receive(sourceId, 5))).toMatchObject({ code: 'source-retired', field: 'sourceId' });
  });

  test.each([0, -1, Number.NaN])('is refused for %d grams', async (grams) => {
    expect(await refusalOf(story.receive(await story.add(), grams))).toMatchObject({
      code: 'invalid-input',
      field: 'grams',
    });
  });

  test('keeps the milligrams', async () => {
    const sourceId = await story.add();
    for (const grams of [0.1, 0.2, 0.0004]) await story.receive(sourceId, grams);
    expect(await story.left(sourceId)).toBe(0.301);
  });
});

describe('taking seed out', () => {
  test('leaves the rest', async () => {
    const sourceId = await story.stored(12.4);
    await story.take(sourceId, 2.4);
    expect(await story.seed(sourceId)).toMatchObject({ gramsLeft: 10, gramsIn: 12.4 });
  });

  test('takes the last milligram and no more', async () => {
    const sourceId = await story.stored(12.4);
    expect(await refusalOf(story.take(sourceId, 12.401))).toMatchObject({
      code: 'more-seed-than-stored',
      field: 'grams',
      data: { wanted: 12.401, left: 12.4 },
    });
    await story.take(sourceId, 12.4);
    expect(await story.left(sourceId)).toBe(0);
  });

  test('is refused where nothing was ever weighed in', async () => {
    expect(await refusalOf(story.take(await story.add(), 1))).toMatchObject({ code: 'no-seed-stored', field: 'grams' });
  });

  test('is refused in days to come, before gathering, and for beds', async () => {
    const sourceId = await story.stored(12, { gathered: '2026-05-01' });
    expect(await refusalOf(story.take(sourceId, 1, '2026-05-21'))).toMatchObject({ code: 'day-in-future' });
    expect(await refusalOf(story.take(sourceId, 1, '2026-04-30'))).toMatchObject({ code: 'day-too-early' });
    expect(await refusalOf(story.take(await story.add({ kind: 'in-ground-bed' }), 1))).toMatchObject({
      code: 'source-holds-no-seed',
    });
  });

  test('by two at once never takes more than there is', async () => {
    const sourceId = await story.stored(10);
    const answers = await Promise.allSettled([
      story.take(sourceId, 7),
      story.take(sourceId, 7),
      story.take(sourceId, 3),
    ]);
    const taken = 10 - ((await story.left(sourceId)) ?? 0);
    expect(taken).toBeLessThanOrEqual(10);
    expect(answers.filter(({ status }) => status === 'fulfilled').length).toBe(2);
    expect(taken).toBe(10);
  });
});

describe('weighing', () => {
  test.each([
    [38.2, -1.8],
    [41, 1],
  ])('%d g where the books say 40 books the difference', async (grams, difference) => {
    const sourceId = await story.stored(40);
    expect((await story.weigh(sourceId, grams)).difference).toBe(difference);
    expect(await story.seed(sourceId)).toMatchObject({
      gramsLeft: grams,
      movements: [{ kind: 'weighed', grams: difference }, { kind: 'cleaned' }],
    });
  });

  test('what the books say books nothing', async () => {
    const sourceId = await story.stored(40);
    expect(await story.weigh(sourceId, 40)).toEqual({ movementId: null, difference: 0 });
    expect((await story.seed(sourceId)).movements.length).toBe(1);
  });

  test('a store for the first time opens it', async () => {
    const sourceId = await story.add();
    await story.weigh(sourceId, 6.5);
    expect(await story.left(sourceId)).toBe(6.5);
  });

  test('an empty jar empties the store, however much the books had', async () => {
    const sourceId = await story.stored(40);
    await story.weigh(sourceId, 0);
    expect(await story.left(sourceId)).toBe(0);
  });

  test('of a day before seed last moved is refused, since nobody can tell the difference apart', async () => {
    const sourceId = await story.stored(40, { storedOn: '2026-05-01' });
    await story.take(sourceId, 10, '2026-05-12');
    expect(await refusalOf(story.weigh(sourceId, 39, '2026-05-11'))).toMatchObject({
      code: 'day-too-early',
      field: 'happenedOn',
      data: { earliest: '2026-05-12' },
    });
    await story.weigh(sourceId, 29, '2026-05-12');
    expect(await story.left(sourceId)).toBe(29);
  });
});

describe('a caution', () => {
  test('is raised for seed to be sown fresh that has lain, and for seed that may not dry and lies dry', async () => {
    const sourceId = await story.add({ gathered: '2026-05-01', sowFresh: true, neverDry: true, storage: 'room' });
    expect((await story.seed(sourceId)).cautions).toEqual(['sow-fresh-passed', 'never-dry-stored-dry']);
  });

  test('is not raised for fresh seed kept moist', async () => {
    const sourceId = await story.add({ gathered: '2026-05-10', sowFresh: true, neverDry: true, storage: 'cold-moist' });
    expect((await story.seed(sourceId)).cautions).toEqual([]);
  });
});

describe('the list of sources', () => {
  test('says what is left and what the last test found, and can be sorted by what is left', async () => {
    const plantId = await story.plant();
    const little = await story.stored(4, { plantId });
    const much = await story.stored(90, { plantId });
    const unknown = await story.add({ plantId });
    await story.test(much, [80, 84, 79, 81]);
    const { rows } = await nursery.as('viewer').sources.listSources({ plantId, sort: 'grams', descending: true });
    expect(rows.map(({ sourceId, gramsLeft, lastTest }) => ({ sourceId, gramsLeft, lastTest }))).toEqual([
      { sourceId: much, gramsLeft: 90, lastTest: { testedOn: '2026-05-20', meanShare: 0.81, toRepeat: false } },
      { sourceId: little, gramsLeft: 4, lastTest: null },
      { sourceId: unknown, gramsLeft: null, lastTest: null },
    ]);
  });
});

describe("what is not this nursery's", () => {
  test('is not found by any booking', async () => {
    const other = await openNursery(database);
    const theirs = seedOf(other);
    const sourceId = await theirs.stored(10);
    const { movementId } = await theirs.take(sourceId, 1);
    for (const work of [
      () => story.receive(sourceId, 1),
      () => story.take(sourceId, 1),
      () => story.weigh(sourceId, 1),
      () => story.test(sourceId, [90]),
    ]) {
      expect(await refusalOf(work())).toMatchObject({ code: 'not-found', field: 'sourceId' });
    }
    expect(await refusalOf(story.takeBack(movementId))).toMatchObject({ code: 'not-found', field: 'movementId' });
    expect(await refusalOf(nursery.as().sources.withdrawViabilityTest(sent({ testId: randomUUID() })))).toMatchObject({
      code: 'not-found',
      field: 'testId',
    });
    expect(await theirs.left(sourceId)).toBe(9);
    await other.close();
  });
});
