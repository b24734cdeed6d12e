import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let plantId: string;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  plantId = await stock.addPlant({ name: 'Asclepias syriaca', code: 'ASSY' });
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

type Body = Parameters<ReturnType<TestNursery['as']>['sources']['addSource']>[0]['body'];
const body = (fields: Partial<Body> = {}): Body => ({
  sourceId: randomUUID(),
  plantId,
  kind: 'seed-collection',
  ...fields,
});
const add = (fields: Partial<Body> = {}) => nursery.as('crew').sources.addSource(sent(body(fields)));
const read = (sourceId: string) => nursery.as('viewer').sources.readSource({ sourceId });
const list = (filter: Parameters<ReturnType<TestNursery['as']>['sources']['listSources']>[0] = {}) =>
  nursery.as('viewer').sources.listSources(filter);

describe('adding a source', () => {
  test('keeps what is known of it and gives it a code of its plant and the year of gathering', async () => {
    const { sourceId, code } = await add({
      gathered: '2025-09',
      provenance: ' Prairie remnant ',
      seedZone: '8b',
      origin: 'wild',
      collector: 'Crew',
      permit: 'P-7',
      note: 'dry hill',
    });
    expect(code).toMatch(/^ASSY-25-\d{3}$/);
    expect(await read(sourceId)).toMatchObject({
      code,
      gatheredOn: '2025-09-01',
      gatheredPrecision: 'month',
      provenance: 'Prairie remnant',
      seedZone: '8b',
      origin: 'wild',
      collector: 'Crew',
      permit: 'P-7',
    });
  });

  test('takes one of which nothing is known', async () => {
    const { sourceId } = await add({ kind: 'unknown' });
    expect(await read(sourceId)).toMatchObject({
      kind: 'unknown',
      origin: 'unknown',
      gatheredOn: null,
      seedZone: null,
    });
  });

  test('never gives one code twice', async () => {
    const codes = [await add({ gathered: '2024' }), await add({ gathered: '2024-10-02' })].map(({ code }) => code);
    expect(new Set(codes).size).toBe(2);
  });

  test('points cuttings at the lot of their mother plants', async () => {
    const { lotId, plantId: motherPlant } = await stock.addReadyLot();
    const { sourceId } = await add({ plantId: motherPlant, kind: 'mother-plants', motherLotId: lotId });
    expect((await read(sourceId)).motherLotId).toBe(lotId);
  });

  test('refuses mother plants without their lot', async () => {
    expect(await refusalOf(add({ kind: 'mother-plants' }))).toMatchObject({
      code: 'mother-lot-missing',
      field: 'motherLotId',
    });
  });

  test('refuses a mother lot of another plant', async () => {
    const { lotId } = await stock.addReadyLot();
    expect(await refusalOf(add({ kind: 'mother-plants', motherLotId: lotId }))).toMatchObject({
      code: 'source-of-other-plant',
      field: 'motherLotId',
    });
  });

  test('refuses gathering in a month to come', async () => {
    expect(await refusalOf(add({ gathered: '2026-06' }))).toMatchObject({
      code: 'day-in-future',
      field: 'gathered',
      data: { day: '2026-06-01', today: '2026-05-20' },
    });
  });

  test('refuses a day that does not exist', async () => {
    expect(await refusalOf(add({ gathered: '2026-02-30' }))).toMatchObject({
      code: 'invalid-input',
      field: 'gathered',
      data: { issues: [{ path: 'gathered', problem: 'not-a-date' }] },
    });
  });

  test('answers a plant that does not exist as not found', async () => {
    expect(await refusalOf(add({ plantId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'plantId',
      data: { what: 'plant' },
    });
  });

  test('answers the plant and the lot of another nursery as not found', async () => {
    const other = await openNursery(database);
    const theirs = await stockOf(other).addReadyLot();
    expect(await refusalOf(add({ plantId: theirs.plantId }))).toMatchObject({ code: 'not-found', field: 'plantId' });
    expect(await refusalOf(add({ kind: 'mother-plants', motherLotId: theirs.lotId }))).toMatchObject({
      code: 'not-found',
      field: 'motherLotId',
    });
    await other.close();
  });

  test('refuses an id that is in use', async () => {
    const { sourceId } = await add();
    expect((await refusalOf(add({ sourceId }))).code).toBe('id-taken');
  });
});

describe('editing a source', () => {
  test('writes the whole of it anew and leaves its code', async () => {
    const { sourceId, code } = await add({ provenance: 'first', seedZone: '8b' });
    await nursery
      .as()
      .sources.editSource(sent({ sourceId, kind: 'bought-seed', provenance: 'second', vendor: 'Seed house' }));
    expect(await read(sourceId)).toMatchObject({
      code,
      kind: 'bought-seed',
      provenance: 'second',
      vendor: 'Seed house',
      seedZone: null,
    });
  });

  test('refuses a mother lot that came from the source itself', async () => {
    const { sourceId, lotId } = await stock.addReadyLot();
    const [lot] = await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]);
    expect(
      await refusalOf(nursery.as().sources.editSource(sent({ sourceId, kind: 'mother-plants', motherLotId: lotId }))),
    ).toMatchObject({ code: 'source-in-itself', field: 'motherLotId', data: { lot: lot?.code } });
  });

  test('answers a source that does not exist as not found', async () => {
    expect(
      await refusalOf(nursery.as().sources.editSource(sent({ sourceId: randomUUID(), kind: 'unknown' }))),
    ).toMatchObject({ code: 'not-found', field: 'sourceId' });
  });
});

describe('retiring a source', () => {
  test('takes it out of the list and can be taken back', async () => {
    const { sourceId, code } = await add();
    await nursery.as().sources.retireSource(sent({ sourceId }));
    expect((await list({ text: code })).total).toBe(0);
    expect((await list({ text: code, state: 'retired' })).rows.map((row) => row.sourceId)).toEqual([sourceId]);
    await nursery.as().sources.restoreSource(sent({ sourceId }));
    expect((await list({ text: code })).total).toBe(1);
  });

  test.each(['retireSource', 'restoreSource'] as const)(
    'answers a source that does not exist as not found: %s',
    async (verb) => {
      expect((await refusalOf(nursery.as().sources[verb](sent({ sourceId: randomUUID() })))).code).toBe('not-found');
    },
  );
});

describe('the list of sources', () => {
  test('is found by any part of provenance, whatever its case', async () => {
    const { sourceId } = await add({ provenance: 'Crooked Hollow 100%' });
    expect((await list({ text: 'HOLLOW 100%' })).rows.map((row) => row.sourceId)).toEqual([sourceId]);
    expect((await list({ text: 'hollow_100' })).total).toBe(0);
  });

  test('is found by a common name of the plant', async () => {
    const other = await stock.addPlant({ name: 'Liatris aspera', code: 'LIAS' });
    await nursery.sql(
      `INSERT INTO plant_name (nursery_id, id, plant_id, kind, name, name_key) VALUES ($1, $2, $3, 'common', 'button blazing-star', 'button blazing star')`,
      [nursery.nurseryId, randomUUID(), other],
    );
    const { sourceId } = await add({ plantId: other });
    expect((await list({ text: 'Blazing-Star' })).rows.map((row) => row.sourceId)).toEqual([sourceId]);
  });

  test('can be narrowed to a plant and a kind', async () => {
    const other = await stock.addPlant({ name: 'Viola pedata', code: 'VIPE' });
    await add({ plantId: other, kind: 'unknown' });
    const wanted = await add({ plantId: other, kind: 'in-ground-bed' });
    expect((await list({ plantId: other, kind: 'in-ground-bed' })).rows.map((row) => row.sourceId)).toEqual([
      wanted.sourceId,
    ]);
  });

  test('comes in pages that together hold every source once, in the order asked for', async () => {
    const other = await stock.addPlant({ name: 'Carex bicknellii', code: 'CABI' });
    for (const year of ['2021', '2024', '2022']) await add({ plantId: other, gathered: year });
    const pages = [
      await list({ plantId: other, sort: 'gathered', descending: true, perPage: 2 }),
      await list({ plantId: other, sort: 'gathered', descending: true, perPage: 2, page: 2 }),
    ];
    expect(pages.flatMap((page) => page.rows.map((row) => row.gatheredOn))).toEqual([
      '2024-01-01',
      '2022-01-01',
      '2021-01-01',
    ]);
    expect(pages[1]?.total).toBe(3);
  });

  test('counts what stands of each source', async () => {
    const { sourceId } = await stock.addReadyLot({ units: 17 });
    const rows = (await list({ sort: 'units', descending: true, perPage: 200 })).rows;
    expect(rows.find((row) => row.sourceId === sourceId)).toMatchObject({ units: 17, openLots: 1, openBatches: 0 });
  });
});

describe("a source's story", () => {
  test('names the lots of it, those potted up from them, and what was gathered from those', async () => {
    const { sourceId, lotId, plantId: itsPlant, containerId, placeId } = await stock.addReadyLot();
    const daughter = await add({ plantId: itsPlant, kind: 'mother-plants', motherLotId: lotId });
    const cutting = await stock.addLot({
      plantId: itsPlant,
      containerId,
      placeId,
      sourceId: daughter.sourceId,
      units: 3,
    });
    const story = await read(sourceId);
    expect(story.lots.map((lot) => lot.lotId).toSorted()).toEqual([lotId, cutting].toSorted());
    expect(story.daughters).toEqual([
      {
        sourceId: daughter.sourceId,
        code: daughter.code,
        motherCode: story.lots.find((lot) => lot.lotId === lotId)?.code,
      },
    ]);
    expect(story.counts).toEqual({ batches: 0, lots: 2, gardens: 0 });
  });

  test('names the gardens its plants were planted in, less what was taken back', async () => {
    const { sourceId, lotId, plantId: itsPlant, containerId, placeId } = await stock.addReadyLot();
    const garden = await plantInGarden({ lotId, placeId, plantId: itsPlant, containerId, units: 12, takenBack: 5 });
    expect((await read(sourceId)).gardens).toEqual([
      {
        orderId: garden.orderId,
        code: garden.code,
        clientName: 'A client',
        siteName: 'A site',
        plantedUnits: 12,
        firstOn: '2026-05-02',
        lastOn: '2026-05-02',
      },
    ]);
  });

  test('answers a source of another nursery as not found', async () => {
    const other = await openNursery(database);
    const theirs = await stockOf(other).addReadyLot();
    expect((await refusalOf(read(theirs.sourceId))).code).toBe('not-found');
    await other.close();
  });
});

/** Two plantings from a staging account, of which the second is reversed: written as the owner, since gardens come after sources. */
async function plantInGarden({
  lotId,
  placeId,
  plantId: itsPlant,
  containerId,
  units,
  takenBack,
}: {
  lotId: string;
  placeId: string;
  plantId: string;
  containerId: string;
  units: number;
  takenBack: number;
}) {
  const [client, site, orderId, line] = [randomUUID(), randomUUID(), randomUUID(), randomUUID()];
  const code = `G-${orderId.slice(0, 4)}`;
  const { nurseryId, sql } = nursery;
  await sql(`INSERT INTO client (nursery_id, id, name) VALUES ($1, $2, 'A client')`, [nurseryId, client]);
  await sql(`INSERT INTO site (nursery_id, id, client_id, name) VALUES ($1, $2, $3, 'A site')`, [
    nurseryId,
    site,
    client,
  ]);
  await sql(
    `INSERT INTO garden_order (nursery_id, id, code, client_id, site_id, kind, due_on) VALUES ($1, $2, $3, $4, $5, 'installation', '2026-05-02')`,
    [nurseryId, orderId, code, client, site],
  );
  await sql(
    `INSERT INTO order_line (nursery_id, id, order_id, rank, plant_id, container_id, units) VALUES ($1, $2, $3, 901, $4, $5, 99)`,
    [nurseryId, line, orderId, itsPlant, containerId],
  );
  await sql(
    `INSERT INTO account (nursery_id, id, kind, lot_id, line_id) VALUES ($1, account_key('staged', $2, $3), 'staged', $2::uuid, $3::uuid)`,
    [nurseryId, lotId, line],
  );
  await sql(
    `INSERT INTO account (nursery_id, id, kind, outside) VALUES ($1, account_key('outside', 'outside', 'planted'), 'outside', 'planted') ON CONFLICT DO NOTHING`,
    [nurseryId],
  );
  const accountOf = {
    place: ['place', lotId, placeId],
    staged: ['staged', lotId, line],
    planted: ['outside', 'outside', 'planted'],
  } as const;
  const entry = async (
    kind: string,
    from: keyof typeof accountOf,
    to: keyof typeof accountOf,
    amount: number,
    reverses: string | null = null,
  ) => {
    const id = randomUUID();
    await sql(
      `WITH n AS (UPDATE nursery SET version = version + 1 WHERE id = $1 RETURNING version)
      INSERT INTO entry (nursery_id, id, version, kind, happened_on, recorded_at, person_id, reverses_id) SELECT $1, $2, version, $3, '2026-05-02', now(), $4, $5 FROM n`,
      [nurseryId, id, kind, nursery.people.grower.personId, reverses],
    );
    await sql(
      `INSERT INTO movement (nursery_id, entry_id, line, from_account_id, to_account_id, from_units, to_units)
      VALUES ($1, $2, 0, account_key($3, $4, $5), account_key($6, $7, $8), $9, $9)`,
      [nurseryId, id, ...accountOf[from], ...accountOf[to], amount],
    );
    return id;
  };
  await entry('pull', 'place', 'staged', units + takenBack);
  await entry('plant', 'staged', 'planted', units);
  const second = await entry('plant', 'staged', 'planted', takenBack);
  await entry('reverse', 'planted', 'staged', takenBack, second);
  return { orderId, code };
}
