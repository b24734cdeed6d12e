import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let ids: { plantId: string; containerId: string; placeId: string };
let ground: string;
let bed: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  ids = {
    plantId: await stock.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' }),
    containerId: await stock.addContainer(),
    placeId: await stock.addPlace(),
  };
  ground = await stock.addContainer({ code: 'ground', kind: 'ground', volumeMl: null });
  bed = await stock.addPlace({ kind: 'nursery-bed' });
  await nursery.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common practice')`,
    [nursery.nurseryId, randomUUID()],
  );
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

type Body = Parameters<ReturnType<TestNursery['as']>['stock']['receiveOpening']>[0]['body'];
type Row = Body['rows'][number];
const row = (fields: Partial<Row> = {}): Row => ({
  lotId: randomUUID(),
  ...ids,
  units: 10,
  since: '2025-09-14',
  ...fields,
});
const receive = (rows: Row[], fields: Partial<Body> = {}) =>
  nursery.as().stock.receiveOpening(sent({ happenedOn: '2026-05-20', rows, ...fields }));
const receiveOne = async (fields: Partial<Row> = {}) => {
  const { lots } = await receive([row(fields)]);
  return lots[0]!;
};
const stored = async (lotId: string) =>
  (
    await nursery.sql(
      `SELECT l.code, potted_on::text, potted_precision, confined_on::text, confined_standing, container_on::text, container_standing, ready_on::text, count_kind,
  plant_by_on::text, source_id, note FROM lot l WHERE id = $1`,
      [lotId],
    )
  )[0]!;
const lotCount = async () =>
  (await nursery.sql<{ n: number }>('SELECT count(*)::int AS n FROM lot WHERE nursery_id = $1', [nursery.nurseryId]))[0]
    ?.n;
const refusalAt = async (fields: Partial<Row>, rest: Partial<Body> = {}) => {
  const before = await lotCount();
  const refusal = await refusalOf(receive([row(), row(), row(fields)], rest));
  expect(await lotCount()).toBe(before);
  return refusal;
};

describe('an opening list', () => {
  test('becomes lots with units, codes and clocks in one entry', async () => {
    const rows = [row({ units: 40 }), row({ units: 7, since: '2026-04' })];
    const { entryId, lots } = await receive(rows, { note: 'count of May' });
    expect(lots.map((lot) => lot.code)).toEqual([
      expect.stringMatching(/^ASIN-25-\d{3}$/),
      expect.stringMatching(/^ASIN-26-\d{3}$/),
    ]);
    expect(await Promise.all(lots.map((lot) => stock.unitsOf(lot.lotId)))).toEqual([40, 7]);
    expect(await nursery.sql('SELECT kind, note, happened_on::text FROM entry WHERE id = $1', [entryId])).toEqual([
      { kind: 'opening', note: 'count of May', happened_on: '2026-05-20' },
    ]);
  });

  test('gets its plant-by days in the same breath', async () => {
    const { lotId } = await receiveOne({ since: '2025-09-14' });
    expect(await stored(lotId)).toMatchObject({
      confined_on: '2025-09-14',
      confined_standing: 'recorded',
      plant_by_on: '2026-09-14',
    });
  });

  test('takes the earliest possible day of a month or season, marked as assumed', async () => {
    const { lotId } = await receiveOne({ since: '2025-autumn' });
    expect(await stored(lotId)).toMatchObject({
      potted_on: '2025-09-01',
      potted_precision: 'season',
      confined_on: '2025-09-01',
      confined_standing: 'assumed',
      container_standing: 'assumed',
    });
  });

  test('takes a year ago where nobody knows since when', async () => {
    const { lotId } = await receiveOne({ since: null });
    expect(await stored(lotId)).toMatchObject({
      potted_on: '2025-05-20',
      potted_precision: 'year',
      confined_on: '2025-05-20',
      confined_standing: 'assumed',
    });
  });

  test('keeps the longer time in plugs apart from the time in this pot', async () => {
    const { lotId } = await receiveOne({ since: '2026-04-01', confinedSince: '2025-08' });
    expect(await stored(lotId)).toMatchObject({
      confined_on: '2025-08-01',
      confined_standing: 'assumed',
      container_on: '2026-04-01',
      container_standing: 'recorded',
      plant_by_on: '2026-08-01',
    });
  });

  test('takes plants that stand in the ground without any clock', async () => {
    const { lotId } = await receiveOne({ containerId: ground, placeId: bed, since: '2021', countKind: 'estimated' });
    expect(await stored(lotId)).toMatchObject({
      confined_on: null,
      container_on: null,
      plant_by_on: null,
      potted_on: '2021-01-01',
      count_kind: 'estimated',
    });
  });

  test('makes a lot ready whose root ball was checked', async () => {
    const { lotId } = await receiveOne({ rootChecked: true });
    expect((await stored(lotId)).ready_on).toBe('2026-05-20');
  });

  test('keeps how each lot came', async () => {
    const { lotId } = await receiveOne({ units: 33, since: '2025-autumn' });
    expect(
      await nursery.sql(
        'SELECT kind, form, arrived_on::text, arrived_precision, received_units, invoiced_units FROM intake WHERE lot_id = $1',
        [lotId],
      ),
    ).toEqual([
      {
        kind: 'opening',
        form: 'pots',
        arrived_on: '2025-09-01',
        arrived_precision: 'season',
        received_units: 33,
        invoiced_units: null,
      },
    ]);
  });

  test('of a hundred rows is one entry', async () => {
    const { lots } = await receive(Array.from({ length: 100 }, () => row({ units: 1 })));
    expect(new Set(lots.map((lot) => lot.code)).size).toBe(100);
  });

  test('of a hundred and one is refused', async () => {
    expect(await refusalOf(receive(Array.from({ length: 101 }, () => row())))).toMatchObject({
      code: 'invalid-input',
      field: 'rows',
    });
  });

  test('sent twice under one id takes effect once', async () => {
    const command = sent({ happenedOn: '2026-05-20', rows: [row({ units: 5 })] });
    const first = await nursery.as().stock.receiveOpening(command);
    const before = await lotCount();
    expect(await nursery.as().stock.receiveOpening(command)).toEqual(first);
    expect(await lotCount()).toBe(before);
  });

  test('is not for the crew', async () => {
    expect(
      (await refusalOf(nursery.as('crew').stock.receiveOpening(sent({ happenedOn: '2026-05-20', rows: [row()] }))))
        .code,
    ).toBe('not-allowed');
  });
});

describe('the sources of an opening list', () => {
  test('are one unknown source a plant, however many rows say nothing', async () => {
    const plantId = await stock.addPlant({ name: 'Zizia aurea', code: 'ZIAU' });
    const first = await receive([row({ plantId }), row({ plantId })]);
    const second = await receive([row({ plantId })]);
    expect(new Set([...first.lots, ...second.lots].map((lot) => lot.sourceId)).size).toBe(1);
  });

  test('are one for the same words, whatever their case', async () => {
    const { lots } = await receive([
      row({ sourceKind: 'seed-collection', provenance: 'Otter Creek' }),
      row({ sourceKind: 'seed-collection', provenance: 'otter creek ' }),
      row({ sourceKind: 'bought-seed', provenance: 'Otter Creek' }),
    ]);
    expect(lots[0]!.sourceId).toBe(lots[1]!.sourceId);
    expect(lots[2]!.sourceId).not.toBe(lots[0]!.sourceId);
  });

  test('are not taken for one of which more is known', async () => {
    const sourceId = randomUUID();
    await nursery.as().sources.addSource(
      sent({
        sourceId,
        plantId: ids.plantId,
        kind: 'seed-collection',
        provenance: 'Long Meadow',
        gathered: '2024-09-20',
      }),
    );
    expect((await receiveOne({ sourceKind: 'seed-collection', provenance: 'Long Meadow' })).sourceId).not.toBe(
      sourceId,
    );
  });

  test('can be named', async () => {
    const sourceId = await stock.addSource(ids.plantId);
    expect((await receiveOne({ sourceId })).sourceId).toBe(sourceId);
  });

  test('say how old plants can be of which nobody knows since when they stand', async () => {
    const sourceId = randomUUID();
    await nursery
      .as()
      .sources.addSource(sent({ sourceId, plantId: ids.plantId, kind: 'seed-collection', gathered: '2025-10-03' }));
    expect((await stored((await receiveOne({ sourceId, since: null })).lotId)).confined_on).toBe('2025-10-03');
  });

  test('must be of the plant of their row', async () => {
    const sourceId = await stock.addSource(await stock.addPlant({ name: 'Carex grayi', code: 'CAGR' }));
    expect(await refusalAt({ sourceId })).toMatchObject({ code: 'source-of-other-plant', field: 'rows.2.sourceId' });
  });

  test('must not be retired', async () => {
    const sourceId = await stock.addSource(ids.plantId);
    await nursery.as().sources.retireSource(sent({ sourceId }));
    expect(await refusalAt({ sourceId })).toMatchObject({ code: 'source-retired', field: 'rows.2.sourceId' });
  });
});

describe('one wrong row leaves the whole list unwritten and names its field', () => {
  test.each([
    ['none', { units: 0 }, 'rows.2.units'],
    ['fewer than none', { units: -4 }, 'rows.2.units'],
    ['half a plant', { units: 2.5 }, 'rows.2.units'],
    ['a day that does not exist', { since: '2025-02-30' }, 'rows.2.since'],
  ])('%s', async (_what, fields, field) => {
    expect(await refusalAt(fields)).toMatchObject({
      code: 'invalid-input',
      field,
      data: { issues: [{ path: field }] },
    });
  });

  test.each([['plantId'], ['containerId'], ['placeId'], ['sourceId']])('a %s of nobody', async (name) => {
    expect(await refusalAt({ [name]: randomUUID() })).toMatchObject({ code: 'not-found', field: `rows.2.${name}` });
  });

  test('what belongs to another nursery', async () => {
    const other = await openNursery(database);
    const theirs = await stockOf(other).addReadyLot();
    for (const name of ['plantId', 'containerId', 'placeId', 'sourceId'] as const)
      expect(await refusalAt({ [name]: theirs[name] })).toMatchObject({ code: 'not-found', field: `rows.2.${name}` });
    await other.close();
  });

  test('a month after the count', async () => {
    expect(await refusalAt({ since: '2026-06' })).toMatchObject({
      code: 'day-after-intake',
      field: 'rows.2.since',
      data: { day: '2026-06-01', intakeOn: '2026-05-20' },
    });
  });

  test('a lot id in use, or twice in the list', async () => {
    const { lotId } = await receiveOne();
    expect(await refusalAt({ lotId })).toMatchObject({ code: 'id-taken', field: 'rows.2.lotId' });
    const twice = randomUUID();
    expect(await refusalOf(receive([row({ lotId: twice }), row({ lotId: twice })]))).toMatchObject({
      code: 'id-taken',
      field: 'rows.1.lotId',
    });
  });

  test('plants in the ground of a bench', async () => {
    expect(await refusalAt({ containerId: ground })).toMatchObject({
      code: 'not-a-nursery-bed',
      field: 'rows.2.placeId',
    });
  });

  test('a place that is given up', async () => {
    const placeId = await stock.addPlace();
    await nursery.as().stock.retirePlace(sent({ placeId }));
    expect(await refusalAt({ placeId })).toMatchObject({ code: 'place-retired', field: 'rows.2.placeId' });
  });
});

test('an opening list counted on a day to come is refused', async () => {
  expect(await refusalOf(receive([row()], { happenedOn: '2026-05-21' }))).toMatchObject({
    code: 'day-in-future',
    field: 'happenedOn',
  });
});

test('an opening list without rows is refused', async () => {
  expect(await refusalOf(receive([]))).toMatchObject({ code: 'invalid-input', field: 'rows' });
});

test('all the laws of the data hold after all of this', async () => {
  expect((await checkLaws(database.ownerUrl)).breaches).toEqual([]);
});
