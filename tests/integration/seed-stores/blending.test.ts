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

const zone = { seedZone: '8b', origin: 'wild' as const, provenance: 'Crooked fen' };

/** Two sources of one plant, and a blend of 30 g of the first and 10 g of the second. */
async function blended(
  first: Parameters<typeof story.stored>[1] = zone,
  second: Parameters<typeof story.stored>[1] = zone,
) {
  const plantId = await story.plant();
  const [a, b] = [await story.stored(50, { plantId, ...first }), await story.stored(10, { plantId, ...second })];
  const answer = await story.blend([
    { sourceId: a, grams: 30 },
    { sourceId: b, grams: 10 },
  ]);
  return { plantId, a, b, ...answer };
}

describe('a blend', () => {
  test('takes the seed of its parts out of their stores and into its own', async () => {
    const { a, b, sourceId, grams, shares } = await blended();
    expect([grams, shares, await story.left(a), await story.left(b), await story.left(sourceId)]).toEqual([
      40,
      [0.75, 0.25],
      20,
      0,
      40,
    ]);
  });

  test('keeps what its parts agree on', async () => {
    const { sourceId, mixed } = await blended();
    expect(mixed).toEqual([]);
    expect(await story.read(sourceId)).toMatchObject({ kind: 'seed-collection', ...zone });
  });

  test('says what its parts do not agree on, and claims none of it', async () => {
    const { sourceId, mixed } = await blended(zone, { seedZone: '9a', origin: 'cultivated', provenance: 'Own field' });
    expect(mixed).toEqual(['provenance', 'seedZone', 'origin']);
    expect(await story.read(sourceId)).toMatchObject({
      seedZone: null,
      origin: 'unknown',
      provenance: 'Crooked fen + Own field',
    });
  });

  test('is as old, as pure and as delicate as its parts together', async () => {
    const { sourceId } = await blended(
      { gathered: '2025-10-02', purity: 0.9, seedsPerGram: 100, sowFresh: true },
      { gathered: '2024-09', purity: 0.5, seedsPerGram: 260, neverDry: true },
    );
    expect(await story.read(sourceId)).toMatchObject({
      gatheredOn: '2024-09-01',
      gatheredPrecision: 'month',
      purity: 0.8,
      seedsPerGram: 125,
      sowFresh: true,
      neverDry: true,
    });
  });

  test('knows its parts, and they know it', async () => {
    const { a, b, sourceId } = await blended();
    expect((await story.read(sourceId)).parts).toMatchObject([
      { sourceId: a, grams: 30, blended: false },
      { sourceId: b, grams: 10 },
    ]);
    expect((await story.read(b)).blends).toMatchObject([{ sourceId, grams: 10, ofGrams: 40, takenBack: false }]);
    expect((await story.seed(b)).movements[0]).toMatchObject({
      kind: 'blended-out',
      grams: -10,
      otherSourceId: sourceId,
    });
  });

  test('shows in the trace of each part, also of a blend of blends', async () => {
    const { a, plantId, sourceId } = await blended();
    const other = await story.stored(5, { plantId });
    const again = await story.blend([
      { sourceId, grams: 10 },
      { sourceId: other, grams: 5 },
    ]);
    const containerId = await story.stock.addContainer({ code: `pot-${again.code}` });
    const lotId = await story.stock.addLot({
      plantId,
      containerId,
      sourceId: again.sourceId,
      placeId: await story.stock.addPlace(),
      units: 7,
    });
    for (const part of [a, sourceId, other])
      expect((await story.read(part)).lots).toMatchObject([{ lotId, sourceCode: again.code, units: 7 }]);
    expect((await story.read(again.sourceId)).parts[0]).toMatchObject({ sourceId, blended: true });
  });

  test('never becomes its own mother by way of a lot', async () => {
    const { a, plantId, sourceId } = await blended();
    const containerId = await story.stock.addContainer({ code: `pot-${sourceId.slice(0, 8)}` });
    const lotId = await story.stock.addLot({ plantId, containerId, sourceId, placeId: await story.stock.addPlace() });
    await nursery.as().sources.weighSeed(sent({ sourceId: a, grams: 0, happenedOn: '2026-05-20' }));
    expect(
      await refusalOf(
        nursery.as().sources.editSource(sent({ sourceId: a, kind: 'mother-plants', motherLotId: lotId })),
      ),
    ).toMatchObject({ code: 'source-in-itself', field: 'motherLotId' });
  });
});

describe('a blend is refused', () => {
  test('of different plants, with the names of both', async () => {
    const [a, b] = [await story.stored(10), await story.stored(10)];
    const { code, field, data } = await refusalOf(
      story.blend([
        { sourceId: a, grams: 1 },
        { sourceId: b, grams: 1 },
      ]),
    );
    expect({ code, field }).toEqual({ code: 'blend-of-different-plants', field: 'parts.1.sourceId' });
    expect(data?.plant).not.toBe(data?.wanted);
  });

  test('of more than a part has, beside that part', async () => {
    const plantId = await story.plant();
    const [a, b] = [await story.stored(10, { plantId }), await story.stored(4, { plantId })];
    expect(
      await refusalOf(
        story.blend([
          { sourceId: a, grams: 10 },
          { sourceId: b, grams: 4.5 },
        ]),
      ),
    ).toMatchObject({ code: 'more-seed-than-stored', field: 'parts.1.grams', data: { wanted: 4.5, left: 4 } });
    expect([await story.left(a), await story.left(b)]).toEqual([10, 4]);
  });

  test('of one source twice, which could take more than it has', async () => {
    const sourceId = await story.stored(10);
    expect(
      await refusalOf(
        story.blend([
          { sourceId, grams: 6 },
          { sourceId, grams: 6 },
        ]),
      ),
    ).toMatchObject({ code: 'blend-part-twice', field: 'parts.1.sourceId' });
  });

  test('of a single part', async () => {
    expect(await refusalOf(story.blend([{ sourceId: await story.stored(10), grams: 6 }]))).toMatchObject({
      code: 'blend-needs-parts',
      data: { parts: 1 },
    });
  });

  test('of beds, retired sources and sources that are not there', async () => {
    const plantId = await story.plant();
    const good = { sourceId: await story.stored(10, { plantId }), grams: 1 };
    const bed = await story.add({ plantId, kind: 'in-ground-bed' });
    const retired = await story.stored(10, { plantId });
    await nursery.as().sources.retireSource(sent({ sourceId: retired }));
    const codes = [];
    for (const sourceId of [bed, retired, randomUUID()])
      codes.push((await refusalOf(story.blend([good, { sourceId, grams: 1 }]))).code);
    expect(codes).toEqual(['source-holds-no-seed', 'source-retired', 'not-found']);
  });

  test('on a day before a part was gathered', async () => {
    const plantId = await story.plant();
    const [a, b] = [await story.stored(10, { plantId }), await story.stored(4, { plantId, gathered: '2026-05-10' })];
    const parts = [
      { sourceId: a, grams: 1 },
      { sourceId: b, grams: 1 },
    ];
    expect(
      await refusalOf(
        nursery.as('crew').sources.blendSources(sent({ sourceId: randomUUID(), parts, happenedOn: '2026-05-09' })),
      ),
    ).toMatchObject({ code: 'day-too-early', data: { earliest: '2026-05-10' } });
  });

  test('under an id that is in use', async () => {
    const plantId = await story.plant();
    const [a, b] = [await story.stored(10, { plantId }), await story.stored(4, { plantId })];
    expect(
      (
        await refusalOf(
          story.blend(
            [
              { sourceId: a, grams: 1 },
              { sourceId: b, grams: 1 },
            ],
            a,
          ),
        )
      ).code,
    ).toBe('id-taken');
  });
});

describe('taking a blend back', () => {
  const movementOf = async (sourceId: string) => (await story.seed(sourceId)).movements[0]?.movementId ?? '';

  test('gives every part its seed back and retires the blend', async () => {
    const { a, b, sourceId } = await blended();
    await story.takeBack(await movementOf(b));
    expect([await story.left(a), await story.left(b), await story.left(sourceId)]).toEqual([50, 10, 0]);
    expect((await story.read(sourceId)).retired).toBe(true);
    expect((await story.read(a)).blends).toMatchObject([{ takenBack: true }]);
  });

  test('is refused once some of it has gone', async () => {
    const { a, sourceId } = await blended();
    await story.take(sourceId, 1);
    expect(await refusalOf(story.takeBack(await movementOf(a)))).toMatchObject({
      code: 'seed-has-gone',
      field: 'movementId',
      data: { grams: 40, left: 39 },
    });
  });

  test('is refused while a batch grows from it, even one that took no weight', async () => {
    const { a, plantId, sourceId } = await blended();
    const containerId = await story.stock.addContainer({
      code: `plug-${sourceId.slice(0, 8)}`,
      kind: 'tray',
      cells: 50,
    });
    const { entryId } = await nursery.as().propagation.startBatch(
      sent({
        batchId: randomUUID(),
        plantId,
        sourceId,
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId,
        units: 50,
        placeId: await story.stock.addPlace(),
        happenedOn: '2026-05-20',
      }),
    );
    expect(await refusalOf(story.takeBack(await movementOf(a)))).toMatchObject({
      code: 'blend-in-use',
      data: { batches: 1 },
    });
    await nursery.as().stock.reverseEntry(sent({ entryId }));
    await story.takeBack(await movementOf(a));
    expect(await story.left(a)).toBe(50);
  });
});
