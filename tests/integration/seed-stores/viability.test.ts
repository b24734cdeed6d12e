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

describe('four replicates of a hundred', () => {
  // 7 CFR 201.55(a), printed table: 12 at means of 89 and 90, 9 at 95, and for the mirrored mean of 11 as much as for 90.
  test.each([
    [[83, 95, 89, 89], 12, 12, false],
    [[82, 95, 89, 90], 13, 12, true],
    [[97, 92, 96, 95], 5, 9, false],
    [[100, 90, 94, 96], 10, 9, true],
    [[5, 16, 11, 12], 11, 12, false],
  ])('%j lie %i apart where %i are allowed', async (replicates, rangePercent, tolerancePercent, toRepeat) => {
    const sourceId = await story.add();
    expect(await story.test(sourceId, replicates)).toMatchObject({ rangePercent, tolerancePercent, toRepeat });
    expect((await story.seed(sourceId)).tests).toMatchObject([
      { rangePercent, tolerancePercent, toRepeat, replicates },
    ]);
  });
});

describe('two replicates of a hundred', () => {
  // 7 CFR 201.55(a) prints a column for two replicates as well: 10 at a mean of 89.
  test.each([
    [[94, 84], false],
    [[95, 83], true],
  ])('%j are judged by their own column', async (replicates, toRepeat) => {
    expect(await story.test(await story.add(), replicates)).toMatchObject({ tolerancePercent: 10, toRepeat });
  });
});

describe('a test of other size', () => {
  test.each([
    [[30, 5], 50],
    [[95, 60, 90], 100],
    [[99], 100],
    [[40, 10, 44, 41], 50],
  ])('%j of %i is kept without any tolerance', async (replicates, seedsPerReplicate) => {
    expect(await story.test(await story.add(), replicates, { seedsPerReplicate })).toMatchObject({
      tolerancePercent: null,
      toRepeat: false,
    });
  });

  test('has the mean over all its seeds', async () => {
    expect((await story.test(await story.add(), [30, 6], { seedsPerReplicate: 50 })).meanShare).toBe(0.36);
  });
});

describe('what is known of seed', () => {
  test('is the latest test that stands', async () => {
    const sourceId = await story.add();
    await story.test(sourceId, [90, 88, 92, 90], { testedOn: '2026-01-10' });
    await story.test(sourceId, [70, 74, 72, 72], { testedOn: '2026-05-10', hardShare: 0.1, dormantShare: 0.05 });
    expect(await story.seed(sourceId)).toMatchObject({
      germination: 0.72,
      hard: 0.1,
      dormant: 0.05,
      testedOn: '2026-05-10',
      testToRepeat: false,
    });
  });

  test('rests on no test that is to be repeated while there is a better one', async () => {
    const sourceId = await story.add();
    await story.test(sourceId, [90, 88, 92, 90], { testedOn: '2026-01-10' });
    await story.test(sourceId, [50, 95, 72, 72], { testedOn: '2026-05-10' });
    expect(await story.seed(sourceId)).toMatchObject({ germination: 0.9, testedOn: '2026-01-10', testToRepeat: false });
  });

  test('says so where only such a test is there', async () => {
    const sourceId = await story.add();
    await story.test(sourceId, [50, 95, 72, 72]);
    expect(await story.seed(sourceId)).toMatchObject({ germination: 0.7225, testToRepeat: true });
  });

  test('goes back to the test before when one is withdrawn', async () => {
    const sourceId = await story.add();
    await story.test(sourceId, [90, 88, 92, 90], { testedOn: '2026-01-10' });
    const { testId } = await story.test(sourceId, [70, 74, 72, 72]);
    await nursery.as().sources.withdrawViabilityTest(sent({ testId }));
    const { germination, tests } = await story.seed(sourceId);
    expect(germination).toBe(0.9);
    expect(tests.map(({ withdrawn }) => withdrawn)).toEqual([true, false]);
  });

  test('is nothing where nothing was tested', async () => {
    expect(await story.seed(await story.add())).toMatchObject({ germination: null, testedOn: null, testMethod: null });
  });
});

describe('a test is refused', () => {
  test('with more sound seeds than a replicate had, beside that replicate', async () => {
    expect(await refusalOf(story.test(await story.add(), [90, 101]))).toEqual({
      code: 'replicate-over-seeds',
      field: 'replicates.1',
      data: { sound: 101, seeds: 100 },
    });
  });

  test('with sound, hard and dormant seed above the whole', async () => {
    expect(await refusalOf(story.test(await story.add(), [90, 90], { hardShare: 0.08, dormantShare: 0.021 }))).toEqual({
      code: 'shares-over-whole',
      field: 'hardShare',
      data: { germinated: 0.9, hard: 0.08, dormant: 0.021 },
    });
  });

  test('but not for a rounding in the last place', async () => {
    expect(
      (await story.test(await story.add(), [2], { seedsPerReplicate: 3, hardShare: 1 / 6, dormantShare: 1 / 6 }))
        .meanShare,
    ).toBeCloseTo(2 / 3, 5);
  });

  test.each([[-0.01], [1.2]])('with a hard share of %d', async (hardShare) => {
    expect(await refusalOf(story.test(await story.add(), [10], { hardShare }))).toMatchObject({
      code: 'invalid-input',
      field: 'hardShare',
      data: { issues: [{ problem: 'not-a-share' }] },
    });
  });

  test('of a day before gathering', async () => {
    expect(
      await refusalOf(story.test(await story.add({ gathered: '2026-03' }), [90], { testedOn: '2026-02-28' })),
    ).toEqual({ code: 'day-too-early', field: 'testedOn', data: { day: '2026-02-28', earliest: '2026-03-01' } });
  });

  test('of a day to come', async () => {
    expect(await refusalOf(story.test(await story.add(), [90], { testedOn: '2026-05-21' }))).toMatchObject({
      code: 'day-in-future',
      field: 'testedOn',
    });
  });

  test('of a bed', async () => {
    expect((await refusalOf(story.test(await story.add({ kind: 'in-ground-bed' }), [90]))).code).toBe(
      'source-holds-no-seed',
    );
  });

  test('without any replicate, and with half a seed', async () => {
    expect(await refusalOf(story.test(await story.add(), []))).toMatchObject({
      code: 'invalid-input',
      field: 'replicates',
    });
    expect(await refusalOf(story.test(await story.add(), [9.5]))).toMatchObject({
      code: 'invalid-input',
      field: 'replicates.0',
    });
  });

  test('under an id that is in use', async () => {
    const { testId } = await story.test(await story.add(), [90]);
    expect((await refusalOf(story.test(await story.add(), [90], { testId }))).code).toBe('id-taken');
  });

  test('a second time from being withdrawn', async () => {
    const { testId } = await story.test(await story.add(), [90]);
    await nursery.as().sources.withdrawViabilityTest(sent({ testId }));
    expect(await refusalOf(nursery.as().sources.withdrawViabilityTest(sent({ testId })))).toMatchObject({
      code: 'test-already-withdrawn',
      field: 'testId',
    });
  });
});
