// What may still be promised is derived once, in a view, and said in three places: all must say what promises themselves judge by.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sent } from '../../support/nursery.ts';
import { type LotStory, openLotStory } from './story.ts';

let story: LotStory;
let quarantineId: string;
beforeAll(async () => {
  story = await openLotStory();
  quarantineId = await story.stock.addPlace({ code: 'QUAR', kind: 'quarantine' });
});
afterAll(() => story.close());

const happenedOn = '2026-05-20';
const viewer = () => story.as('viewer');
const rowOf = async (lotId: string, onlyFree = false) =>
  (await viewer().stock.listLots({ free: onlyFree, perPage: 200 })).rows.find((row) => row.lotId === lotId);
const boardRowOf = async (lotId: string, onlyFree = false) =>
  (await viewer().potLife.readBoard({ free: onlyFree, perPage: 200 })).rows.find((row) => row.id === lotId);

const reads = [
  ['the stock table', async (lotId: string) => (await rowOf(lotId))?.freeUnits],
  ['the board', async (lotId: string) => (await boardRowOf(lotId))?.freeUnits],
  ['the page of a lot', async (lotId: string) => (await viewer().stock.readLot({ lotId })).units.free],
] as const;

/** 40 plants, some of which stand at the quarantine place. */
async function quarantined(units: number) {
  const begun = await story.begin();
  await story.as('crew').stock.moveLot(sent({ lotId: begun.lotId, units, toPlaceId: quarantineId, happenedOn }));
  return begun;
}

describe.each(reads)('%s', (_name, freeOf) => {
  test('counts nothing that stands at a quarantine place as free', async () => {
    const { lotId } = await quarantined(15);
    expect(await freeOf(lotId)).toBe(25);
  });

  test('takes what is reserved from what stands elsewhere, and never falls below none', async () => {
    const some = await story.begin();
    await story.promise(some, 30, some.lotId);
    await story.sql(`UPDATE place SET kind = 'quarantine' WHERE id = $1`, [some.benchId]);
    expect(await freeOf(some.lotId)).toBe(0);
  });

  test('counts nothing of a held lot as free', async () => {
    const { lotId } = await quarantined(15);
    await story.as('grower').stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector', happenedOn }));
    expect(await freeOf(lotId)).toBe(0);
  });
});

test('a lot that wholly stands at a quarantine place is not among those of which something is free', async () => {
  const { lotId } = await quarantined(40);
  expect([await rowOf(lotId, true), await boardRowOf(lotId, true)]).toEqual([undefined, undefined]);
});

test('the view of free units says of every lot what promises judge by', async () => {
  const some = await quarantined(15);
  await story.promise(some, 30, some.lotId);
  const held = await story.begin();
  await story.as('grower').stock.holdMany(sent({ lotIds: [held.lotId], reason: 'inspector', happenedOn }));
  const compared = await story.sql(`
    SELECT f.lot_id, f.free_units, f.supply_units, f.reserved_units, f.is_held,
           CASE WHEN j.held THEN 0 ELSE greatest(0, j.units - coalesce(r.units, 0)) END::int AS judged, j.units, j.held, coalesce(r.units, 0)::int AS reserved
      FROM free_units f FULL JOIN (SELECT * FROM judged_supply WHERE kind = 'lot') j ON j.id = f.lot_id
      LEFT JOIN (SELECT supply_id, sum(units) AS units FROM reservation GROUP BY supply_id) r ON r.supply_id = j.id`);
  expect(
    compared.map((row) => [row['free_units'], row['supply_units'], row['reserved_units'], row['is_held']]),
  ).toEqual(compared.map((row) => [row['judged'], row['units'], row['reserved'], row['held']]));
  expect(compared.map((row) => row['free_units'])).toContain(0);
  expect(compared.filter((row) => row['lot_id'] === some.lotId)).toMatchObject([
    { free_units: 0, supply_units: 25, reserved_units: 30 },
  ]);
});
