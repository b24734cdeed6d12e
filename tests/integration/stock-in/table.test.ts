import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let house: string;
let bench: string;
const lots: Record<string, string> = {};

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  house = await stock.addPlace({ code: 'H1', kind: 'house' });
  bench = await stock.addPlace({ code: 'H1-B1' });
  await nursery.sql('UPDATE place SET parent_id = $1 WHERE id = $2', [house, bench]);
  const yard = await stock.addPlace({ code: 'Y1', kind: 'yard' });
  const [milkweed, sedge] = [
    await stock.addPlant(),
    await stock.addPlant({
      name: 'Carex bicknellii',
      code: 'CABI',
      rootHabit: 'fibrous',
      dormantMonths: [],
      lastEmergenceMd: null,
    }),
  ];
  await nursery.sql(
    `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'common', 'Butterfly milkweed', 'butterfly milkweed')`,
    [nursery.nurseryId, randomUUID(), milkweed],
  );
  const [pot, tray] = [
    await stock.addContainer(),
    await stock.addContainer({ code: 'plug-50', kind: 'tray', cells: 50 }),
  ];
  const [milkweedSource, sedgeSource] = [await stock.addSource(milkweed), await stock.addSource(sedge)];
  const at = { plantId: milkweed, containerId: pot, sourceId: milkweedSource, placeId: bench };
  lots.past = await stock.addLot({ ...at, units: 40, plantByOn: '2026-05-19' });
  lots.due = await stock.addLot({ ...at, units: 30, plantByOn: '2026-05-20', placeId: house });
  lots.coming = await stock.addLot({ ...at, units: 20, plantByOn: '2026-07-05', placeId: yard });
  lots.ample = await stock.addLot({ ...at, units: 10, plantByOn: '2026-10-15', containerId: tray, placeId: yard });
  lots.unlimited = await stock.addLot({
    ...at,
    units: 50,
    plantId: sedge,
    sourceId: sedgeSource,
    placeId: yard,
    pottedOn: '2026-05-01',
  });
  await nursery.sql(`UPDATE lot SET plant_by_state = 'no-window' WHERE id = $1`, [lots.coming]);
  await nursery.sql(
    `INSERT INTO hold (nursery_id, id, lot_id, reason, entry_id, held_on) SELECT nursery_id, $2, id, 'quarantine', created_entry_id, '2026-05-01' FROM lot WHERE id = $1`,
    [lots.ample, randomUUID()],
  );
  await nursery.as().stock.loseFromLot(
    sent({
      lotId: (lots.closed = await stock.addLot({ ...at, units: 3 })),
      units: 3,
      cause: 'rot',
      happenedOn: '2026-05-20',
    }),
  );
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

type Filter = Parameters<ReturnType<TestNursery['as']>['stock']['listLots']>[0];
const list = (filter: Filter = {}) => nursery.as('viewer').stock.listLots(filter);
const namesIn = async (filter: Filter) => {
  const names = new Map(Object.entries(lots).map(([name, lotId]) => [lotId, name]));
  return (await list(filter)).rows.map((row) => names.get(row.lotId));
};
const rowOf = async (name: string) => (await list({ state: 'all' })).rows.find((row) => row.lotId === lots[name])!;

describe('the stock table shows', () => {
  test('the open lots, what must leave its pot first coming first', async () => {
    expect(await namesIn({})).toEqual(['past', 'due', 'coming', 'ample', 'unlimited']);
  });

  test('each lot with its units, places and clock', async () => {
    expect(await rowOf('past')).toMatchObject({
      scientificName: 'Asclepias tuberosa',
      onHandUnits: 40,
      reservedUnits: 0,
      freeUnits: 40,
      stagedUnits: 0,
      hereUnits: null,
      band: 'past',
      daysLeft: -1,
      dormant: false,
      places: [{ code: 'H1-B1', units: 40 }],
      holds: [],
      closedOn: null,
    });
  });

  test('nothing free of a held lot', async () => {
    expect(await rowOf('ample')).toMatchObject({ onHandUnits: 10, freeUnits: 0, holds: ['quarantine'] });
  });

  test('a lot without a limit as such', async () => {
    expect(await rowOf('unlimited')).toMatchObject({ band: 'unlimited', daysLeft: null, plantByOn: null });
  });

  test('what is dormant now', async () => {
    nursery.clock.set('2026-12-01');
    expect((await rowOf('past')).dormant).toBe(true);
    expect((await rowOf('unlimited')).dormant).toBe(false);
    nursery.clock.set('2026-05-20');
  });

  test('what is promised of a lot, and what is left', async () => {
    await promise(lots.due!, 12);
    expect(await rowOf('due')).toMatchObject({ onHandUnits: 30, reservedUnits: 12, freeUnits: 18 });
  });
});

describe('the stock table can be narrowed', () => {
  test.each([
    ['to closed lots', { state: 'closed' as const }, ['closed']],
    ['to a place with all that lies in it', { place: 'house' }, ['past', 'due']],
    ['to a common name, wherever the word stands', { text: 'Milkweed' }, ['past', 'due', 'coming', 'ample']],
    ['to a scientific name', { text: 'bicknell' }, ['unlimited']],
    ['to the held', { held: 'any' as const }, ['ample']],
    ['to those held for one reason', { held: 'inspector' as const }, []],
    ['to those that are not held', { held: 'none' as const }, ['past', 'due', 'coming', 'unlimited']],
    ['to what is past', { band: 'past' as const }, ['past']],
    ['to what is due', { band: 'due' as const }, ['due']],
    ['to what is coming', { band: 'coming' as const }, ['coming']],
    ['to what has ample time', { band: 'ample' as const }, ['ample']],
    ['to what nothing limits', { band: 'unlimited' as const }, ['unlimited']],
    ['to what has no window left', { band: 'no-window' as const }, ['coming']],
    ['to what is free', { free: true }, ['past', 'due', 'coming', 'unlimited']],
  ])('%s', async (_what, { place, ...filter }: { place?: string } & Filter, names) => {
    expect(await namesIn({ ...filter, ...(place ? { placeId: house } : {}) })).toEqual(names);
  });

  test('to a place says what stands there of each lot', async () => {
    const { rows } = await list({ placeId: bench });
    expect(rows.map((row) => row.hereUnits)).toEqual([40]);
  });

  test('to the bands draws the same lines as the bands shown', async () => {
    for (const band of ['past', 'due', 'coming', 'ample', 'unlimited'] as const) {
      expect((await list({ band })).rows.every((row) => row.band === band)).toBe(true);
    }
  });

  test('to signs that a pattern would read as wildcards finds only those signs', async () => {
    expect((await list({ text: '%' })).total).toBe(0);
  });
});

describe('the stock table is put in order', () => {
  test.each([
    [{ sort: 'units' as const, descending: true }, ['unlimited', 'past', 'due', 'coming', 'ample']],
    [{ sort: 'potted' as const, descending: true }, 'unlimited'],
    [{ sort: 'plant' as const, descending: true }, 'unlimited'],
    [{ sort: 'free' as const }, 'ample'],
  ])('by %o', async (filter, expected) => {
    const names = await namesIn(filter);
    expect(Array.isArray(expected) ? names : names[0]).toEqual(expected);
  });

  test('in pages that together hold every lot once', async () => {
    const pages = [
      await namesIn({ perPage: 2 }),
      await namesIn({ perPage: 2, page: 2 }),
      await namesIn({ perPage: 2, page: 3 }),
    ];
    expect(pages.flat()).toEqual(['past', 'due', 'coming', 'ample', 'unlimited']);
  });

  test('and a page beyond the last still knows how many there are', async () => {
    expect(await list({ perPage: 2, page: 9 })).toMatchObject({ rows: [], total: 5 });
  });

  test('but not by what it does not know', async () => {
    expect(await refusalOf(list({ sort: 'colour' as 'code' }))).toMatchObject({ code: 'invalid-input', field: 'sort' });
  });
});

test('the stock table of one nursery shows nothing of another', async () => {
  const other = await openNursery(database);
  expect((await other.as('viewer').stock.listLots({ state: 'all' })).total).toBe(0);
  await other.close();
});

/** A promise written as the owner: what makes promises comes after stock. */
async function promise(lotId: string, units: number): Promise<void> {
  const [client, order, line] = [randomUUID(), randomUUID(), randomUUID()];
  const { nurseryId, sql } = nursery;
  await sql(`INSERT INTO client (nursery_id, id, name) VALUES ($1, $2, 'A client')`, [nurseryId, client]);
  await sql(
    `INSERT INTO garden_order (nursery_id, id, code, client_id, kind, due_on) VALUES ($1, $2, 'G-1', $3, 'pickup', '2026-06-01')`,
    [nurseryId, order, client],
  );
  await sql(
    `INSERT INTO order_line (nursery_id, id, order_id, rank, plant_id, container_id, units) SELECT $1, $2, $3, 1, plant_id, container_id, $5 FROM lot WHERE id = $4`,
    [nurseryId, line, order, lotId, units],
  );
  await sql(`INSERT INTO reservation (nursery_id, line_id, supply_id, lot_id, units) VALUES ($1, $2, $3, $3, $4)`, [
    nurseryId,
    line,
    lotId,
    units,
  ]);
}
