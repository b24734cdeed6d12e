import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;
let lotId: string;
let placeId: string;
let plantId: string;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-05-10' });
});
beforeEach(async () => {
  server.clock.set('2026-05-10');
  nursery = { ...(await server.addNursery()), close: server.close };
  stock = stockOf(nursery);
  ({ lotId, placeId, plantId } = await stock.addReadyLot({ units: 40, pottedOn: '2025-09-01' }));
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const as = (role: 'grower' | 'crew' | 'viewer' = 'grower') => nursery.as(role).stock;
const count = (
  upUnits: number,
  deadUnits: number,
  notUpUnits: number,
  more: { on?: string; bookDifferences?: boolean; confirmed?: boolean; lotId?: string; placeId?: string } = {},
) =>
  as().countSpring(
    sent({
      counts: [{ lotId: more.lotId ?? lotId, placeId: more.placeId ?? placeId, upUnits, deadUnits, notUpUnits }],
      happenedOn: more.on ?? '2026-05-01',
      bookDifferences: more.bookDifferences ?? false,
      confirmed: more.confirmed ?? true,
    }),
  );
const left = async (outside: string) =>
  (
    await nursery.sql<{ units: number }>(
      `SELECT coalesce(sum(m.from_units), 0)::int AS units FROM movement m JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id WHERE m.nursery_id = $1 AND t.outside = $2`,
      [nursery.nurseryId, outside],
    )
  )[0]?.units;

describe('the spring count', () => {
  it('takes the dead off as lost to winter and leaves what is not up on hand', async () => {
    expect(await count(25, 5, 10)).toMatchObject({ lots: 1, upUnits: 25, deadUnits: 5, notUpUnits: 10 });
    expect(await stock.unitsOf(lotId)).toBe(35);
    expect(await left('lost')).toBe(5);
    const [entry] = (await as().readLot({ lotId })).entries;
    expect(entry).toMatchObject({
      kind: 'count',
      cause: 'winter',
      spring: { upUnits: 25, deadUnits: 5, notUpUnits: 10 },
    });
  });

  it('books no loss where nothing died', async () => {
    await count(40, 0, 0);
    const [entry] = (await as().readLot({ lotId })).entries;
    expect([entry?.cause, entry?.movements, await stock.unitsOf(lotId)]).toEqual([null, [], 40]);
  });

  it('refuses numbers that do not sum to what stands there, with both, and writes nothing', async () => {
    const refusal = await refusalOf(count(20, 5, 10));
    expect(refusal).toMatchObject({
      code: 'spring-count-differs',
      field: 'counts',
      data: { lots: [{ lotId, placeId, standing: 40, counted: 35 }] },
    });
    expect([
      await stock.unitsOf(lotId),
      await nursery.sql('SELECT 1 FROM spring_count WHERE nursery_id = $1', [nursery.nurseryId]),
    ]).toEqual([40, []]);
  });

  it('books fewer as unexplained when asked to', async () => {
    await count(20, 5, 10, { bookDifferences: true });
    expect([await stock.unitsOf(lotId), await left('unexplained'), await left('lost')]).toEqual([30, 5, 5]);
  });

  it('books more as found when asked to, before the dead are taken off', async () => {
    await count(5, 41, 0, { bookDifferences: true });
    expect([await stock.unitsOf(lotId), await left('lost')]).toEqual([5, 41]);
  });

  it('asks once more before plants that may be dormant are written off', async () => {
    expect(await refusalOf(count(35, 5, 0, { confirmed: false }))).toMatchObject({
      code: 'may-be-dormant',
      field: 'counts',
      data: { lastEmergenceMd: '06-10' },
    });
    expect(await count(35, 0, 5, { confirmed: false })).toMatchObject({ notUpUnits: 5 });
  });

  it('counts a whole place in one entry, which one reversal takes back', async () => {
    const sourceId = await stock.addSource(plantId);
    const other = await stock.addLot({
      plantId,
      containerId: await stock.addContainer({ code: 'tall-4l' }),
      sourceId,
      placeId,
      units: 10,
      pottedOn: '2025-09-01',
    });
    const { entryId } = await as().countSpring(
      sent({
        counts: [
          { lotId, placeId, upUnits: 30, deadUnits: 10, notUpUnits: 0 },
          { lotId: other, placeId, upUnits: 7, deadUnits: 3, notUpUnits: 0 },
        ],
        happenedOn: '2026-05-01',
        confirmed: true,
      }),
    );
    expect([await stock.unitsOf(lotId), await stock.unitsOf(other)]).toEqual([30, 7]);
    await as().reverseEntry(sent({ entryId }));
    expect([await stock.unitsOf(lotId), await stock.unitsOf(other)]).toEqual([40, 10]);
    expect(await as().listNotUp({ waiting: true })).toEqual([]);
  });

  it('says that the lots are counted, and takes that back with the entry', async () => {
    await nursery.sql(`UPDATE lot SET count_kind = 'estimated' WHERE id = $1`, [lotId]);
    const { entryId } = await count(40, 0, 0);
    expect((await as().readLot({ lotId })).countKind).toBe('counted');
    await as().reverseEntry(sent({ entryId }));
    expect((await as().readLot({ lotId })).countKind).toBe('estimated');
  });

  it("answers what is not this nursery's as not found", async () => {
    expect(await refusalOf(count(1, 0, 0, { lotId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'counts',
      data: { what: 'lot' },
    });
    expect(await refusalOf(count(1, 0, 0, { placeId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'counts',
      data: { what: 'place' },
    });
  });

  it('refuses a day before the lot was potted, and one that is still to come', async () => {
    expect(await refusalOf(count(40, 0, 0, { on: '2025-08-31' }))).toMatchObject({
      code: 'day-too-early',
      field: 'happenedOn',
    });
    expect(await refusalOf(count(40, 0, 0, { on: '2026-05-11' }))).toMatchObject({
      code: 'day-in-future',
      field: 'happenedOn',
    });
  });

  it('takes no lot at a place twice', async () => {
    const row = { lotId, placeId, upUnits: 20, deadUnits: 0, notUpUnits: 0 };
    expect(await refusalOf(as().countSpring(sent({ counts: [row, row], happenedOn: '2026-05-01' })))).toMatchObject({
      code: 'invalid-input',
      field: 'counts',
    });
  });

  it('is for everybody who works in the nursery, and for no viewer', async () => {
    const body = { counts: [{ lotId, placeId, upUnits: 40, deadUnits: 0, notUpUnits: 0 }], happenedOn: '2026-05-01' };
    expect(await refusalOf(as('viewer').countSpring(sent(body)))).toMatchObject({ code: 'not-allowed' });
    expect(await as('crew').countSpring(sent(body))).toMatchObject({ upUnits: 40 });
  });
});

describe('what has not come up', () => {
  it("is waited for until the plant's last-emergence day, and asked about after it", async () => {
    await count(30, 0, 10);
    expect(await as().listNotUp({})).toEqual([]);
    expect(await as().listNotUp({ waiting: true })).toMatchObject([
      { lotId, notUpUnits: 10, standingUnits: 40, untilOn: '2026-06-10', isAsked: false },
    ]);
    server.clock.set('2026-06-11');
    expect(await as().listNotUp({})).toMatchObject([{ lotId, notUpUnits: 10, isAsked: true }]);
  });

  it('is answered by a later count: written off, or kept for another year', async () => {
    await count(30, 0, 10);
    server.clock.set('2026-06-12');
    await count(30, 6, 4, { on: '2026-06-12' });
    expect(await as().listNotUp({})).toEqual([]);
    expect(await as().listNotUp({ waiting: true })).toMatchObject([{ notUpUnits: 4, untilOn: '2027-06-10' }]);
    server.clock.set('2027-06-11');
    expect(await as().listNotUp({})).toMatchObject([{ notUpUnits: 4 }]);
  });

  it('is no more than still stands', async () => {
    await count(30, 0, 10);
    await as().loseFromLot(sent({ lotId, units: 33, cause: 'animals' as const, happenedOn: '2026-05-09' }));
    expect(await as().listNotUp({ waiting: true })).toMatchObject([{ notUpUnits: 7, standingUnits: 7 }]);
  });

  it('is asked about where the plants stand now, and found by the place in which that lies', async () => {
    await count(30, 0, 10);
    const toPlaceId = await stock.addPlace({ code: 'YARD' });
    await as().moveLot(sent({ lotId, toPlaceId, happenedOn: '2026-05-05' }));
    expect(await as().listNotUp({ placeId: toPlaceId, waiting: true })).toMatchObject([
      { placeId: toPlaceId, notUpUnits: 10 },
    ]);
    expect(await as().listNotUp({ placeId, waiting: true })).toEqual([]);
  });
});

describe('the sheet to count on', () => {
  it("lists what stands at a place and in what lies in it, with this year's last count", async () => {
    await count(30, 0, 10);
    const bench = await stock.addPlace({ code: 'A9' });
    await nursery.sql('UPDATE place SET parent_id = $2 WHERE id = $1', [bench, placeId]);
    await as().moveLot(sent({ lotId, placeId, units: 15, toPlaceId: bench, happenedOn: '2026-05-05' }));
    expect(await as().readSpringSheet({ placeId })).toMatchObject([
      { lotId, placeCode: 'A9', standing: 15, last: null },
      { lotId, placeId, standing: 25, last: { countedOn: '2026-05-01', upUnits: 30, deadUnits: 0, notUpUnits: 10 } },
    ]);
  });

  it('lists one lot at all its places, and nothing of last year', async () => {
    await count(30, 0, 10);
    server.clock.set('2027-04-20');
    expect(await as().readSpringSheet({ lotId })).toMatchObject([{ lotId, placeId, standing: 40, last: null }]);
  });

  it("answers what is not this nursery's as not found", async () => {
    expect(await refusalOf(as().readSpringSheet({ placeId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      data: { what: 'place' },
    });
    expect(await refusalOf(as().readSpringSheet({ lotId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      data: { what: 'lot' },
    });
  });
});
