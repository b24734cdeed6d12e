import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let nursery: TestNursery;
let stock: ReturnType<typeof stockOf>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  stock = stockOf(nursery);
  await nursery.sql(
    `INSERT INTO pot_life_rule (nursery_id, id, basis, span, genus, standing) VALUES ($1, $2, 'confined', 'P1Y', 'Asclepias', 'common practice')`,
    [nursery.nurseryId, randomUUID()],
  );
  for (const [opens, closes] of [
    ['04-15', '06-15'],
    ['09-01', '10-15'],
  ]) {
    await nursery.sql(
      `INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, standing) VALUES ($1, $2, $3, $4, 'assumed')`,
      [nursery.nurseryId, randomUUID(), opens, closes],
    );
  }
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

/** A lot whose clock was reckoned, as each command that touches it does. */
async function addClockedLot(pottedOn: string, units = 11) {
  const lot = await stock.addReadyLot({ units, pottedOn });
  await nursery
    .as('crew')
    .stock.loseFromLot(sent({ lotId: lot.lotId, units: 1, cause: 'rot', happenedOn: '2026-05-20' }));
  return lot;
}
const rowOf = async (lotId: string, filter: object = {}) =>
  (await nursery.as('viewer').potLife.readBoard({ perPage: 200, ...filter })).rows.find((row) => row.id === lotId);

describe('the board', () => {
  test('gives the plant-by day of a one-year limit pulled back to the autumn window, and the rule behind it', async () => {
    const { lotId } = await addClockedLot('2026-04-14');
    expect(await rowOf(lotId)).toMatchObject({
      kind: 'lot',
      onHandUnits: 10,
      freeUnits: 10,
      plantByOn: '2026-10-15',
      limitOn: '2027-04-14',
      state: 'window',
      clockOn: '2026-04-14',
      band: 'ample',
      rule: { basis: 'confined', span: 'P1Y', standing: 'common practice', reach: { genus: 'Asclepias' } },
      window: { opensMd: '09-01', closesMd: '10-15' },
      dormant: false,
      potUpHelps: false,
    });
  });

  test('tells a lot without a window from one that is overdue', async () => {
    const overdue = await addClockedLot('2025-05-01');
    const none = await addClockedLot('2025-07-01');
    expect(await rowOf(overdue.lotId)).toMatchObject({
      state: 'window',
      plantByOn: '2026-05-01',
      band: 'past',
      daysLeft: -19,
    });
    nursery.clock.set('2026-06-20');
    expect(await rowOf(none.lotId)).toMatchObject({ plantByOn: '2026-06-15', band: 'past' });
    nursery.clock.set('2026-05-20');
  });

  test('says that a lot in its dormant months is dormant', async () => {
    const { lotId } = await addClockedLot('2026-04-14');
    nursery.clock.set('2026-11-24');
    expect(await rowOf(lotId)).toMatchObject({ dormant: true, lastEmergenceMd: '06-10' });
    nursery.clock.set('2026-05-20');
  });

  test('shows how much of the pot life has passed', async () => {
    const { lotId } = await addClockedLot('2026-04-14');
    expect((await rowOf(lotId))?.share).toBeCloseTo(36 / 184, 6);
  });

  test('counts each band over the whole nursery, whatever is filtered', async () => {
    const whole = await nursery.as('viewer').potLife.readBoard({ perPage: 200 });
    const one = await nursery.as('viewer').potLife.readBoard({ show: 'past', perPage: 200 });
    expect(one.counts).toEqual(whole.counts);
    expect(one.rows.every((row) => row.band === 'past')).toBe(true);
    expect(one.total).toBe(whole.counts.past);
    const { 'no-window': _noWindow, 'winter-carry': _carried, 'mother-stock': _mothers, ...bands } = whole.counts;
    expect(Object.values(bands).reduce((sum, n) => sum + n, 0)).toBe(whole.total);
  });

  test('puts what must leave first at the top, and pages', async () => {
    const first = await nursery.as('viewer').potLife.readBoard({ perPage: 2 });
    const second = await nursery.as('viewer').potLife.readBoard({ perPage: 2, page: 2 });
    const days = [...first.rows, ...second.rows].map((row) => row.plantByOn ?? '9999');
    expect(days).toEqual([...days].sort());
    expect(new Set([...first.rows, ...second.rows].map((row) => row.id)).size).toBe(4);
  });

  test('counts nothing of held stock as free', async () => {
    const { lotId } = await addClockedLot('2026-04-14');
    const [entry] = await nursery.sql<{ id: string }>('SELECT created_entry_id AS id FROM lot WHERE id = $1', [lotId]);
    await nursery.sql(
      `INSERT INTO hold (nursery_id, id, lot_id, reason, entry_id, held_on) VALUES ($1, $2, $3, 'quarantine', $4, '2026-05-20')`,
      [nursery.nurseryId, randomUUID(), lotId, entry?.id],
    );
    expect(await rowOf(lotId)).toMatchObject({ freeUnits: 0, holds: ['quarantine'] });
    expect(await rowOf(lotId, { free: true })).toBeUndefined();
  });
});
