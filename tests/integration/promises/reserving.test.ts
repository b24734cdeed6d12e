import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

describe('promises', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    return () => nursery.close();
  });
  afterAll(() => database.drop());

  it('are made by themselves when a line is ordered', async () => {
    const lotId = await story.addLot({ units: 40 });
    const { lineId } = await story.order([{ units: 12 }]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 12 });
  });

  it('take the plants first that must leave their pots first', async () => {
    const later = await story.addLot({ units: 40, plantByOn: '2026-10-15' });
    const sooner = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const { lineId } = await story.order([{ units: 12 }]);
    expect(await story.heldBy(lineId)).toEqual({ [sooner]: 10, [later]: 2 });
  });

  it('never take plants that must be in the ground before the day, or that are not ready by then', async () => {
    await story.addLot({ units: 40, plantByOn: '2026-05-25' });
    const unready = await story.addLot({ units: 40 });
    await nursery.sql(`UPDATE lot SET ready_on = '2026-07-01' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      unready,
    ]);
    const { orderId, lineId } = await story.order([{ units: 12 }]);
    const line = await story.lineOf(orderId, lineId);
    expect(line.shortUnits).toBe(12);
    expect(
      line.reasons
        .map(({ reason, units, day }) => ({ reason, units, day }))
        .sort((a, b) => a.reason.localeCompare(b.reason)),
    ).toEqual([
      { reason: 'not-ready', units: 40, day: '2026-07-01' },
      { reason: 'past-plant-by', units: 40, day: '2026-05-25' },
    ]);
  });

  it('let a client who plants later have only what lasts until then', async () => {
    await story.addLot({ units: 40, plantByOn: '2026-06-10' });
    await nursery.as('grower').clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 10 }));
    const fetched = await story.order([{ units: 5 }], { kind: 'pickup' });
    const planted = await story.order([{ units: 5 }]);
    expect(await story.heldBy(fetched.lineId)).toEqual({});
    expect(Object.values(await story.heldBy(planted.lineId))).toEqual([5]);
  });

  it('follow the lead of a client when it is changed', async () => {
    const lotId = await story.addLot({ units: 40, plantByOn: '2026-06-10' });
    const { lineId } = await story.order([{ units: 5 }], { kind: 'pickup' });
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
    await nursery.as('grower').clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 10 }));
    expect(await story.heldBy(lineId)).toEqual({});
  });

  it('keep to the planting windows of the site’s region', async () => {
    await story.addLot({ units: 40, plantByOn: '2026-08-01' });
    await nursery.sql(
      `INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, region, standing) VALUES ($1, $2, '04-15', '06-15', 'MN', 'assumed')`,
      [nursery.nurseryId, randomUUID()],
    );
    const { lineId } = await story.order([{ units: 5 }], { dueOn: '2026-07-01' });
    expect(Object.values(await story.heldBy(lineId))).toEqual([5]);
    await nursery.as('grower').clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'MN' }));
    expect(await story.heldBy(lineId)).toEqual({});
  });

  it('serve an overdue order from today on', async () => {
    const lotId = await story.addLot({ units: 40, plantByOn: '2026-05-30' });
    const { lineId } = await story.order([{ units: 5 }], { dueOn: '2026-05-01' });
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
  });

  it('prefer what was asked for to an alternative that leaves sooner', async () => {
    const other = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const asked = await story.addLot({ units: 4 });
    const alternative = await story.addLot({ units: 40, plantId: other, plantByOn: '2026-06-15' });
    const { lineId } = await story.order([
      { units: 10, alternatives: [{ plantId: other, containerId: story.containerId }] },
    ]);
    expect(await story.heldBy(lineId)).toEqual({ [asked]: 4, [alternative]: 6 });
  });

  it('hold units of a growing batch at its cautious yield, ready in time', async () => {
    const batchId = randomUUID();
    const started = await nursery.sql<{ id: string }>(
      `SELECT created_entry_id AS id FROM lot WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, await story.addLot({ units: 1 })],
    );
    await nursery.sql(
      `INSERT INTO batch (nursery_id, id, code, plant_id, source_id, created_entry_id, method, unit, started_on, target_container_id, cautious_units, ready_on)
      VALUES ($1, $2, 'B-1', $3, $4, $5, 'seed', 'tray', '2026-04-14', $6, 30, '2026-07-01')`,
      [nursery.nurseryId, batchId, story.plantId, story.sourceId, started[0]?.id, story.containerId],
    );
    const early = await story.order([{ units: 5 }], { dueOn: '2026-06-20' });
    const late = await story.order([{ units: 50 }], { dueOn: '2026-07-01' });
    expect(Object.keys(await story.heldBy(early.lineId))).not.toContain(batchId);
    expect(await story.heldBy(late.lineId)).toEqual({ [batchId]: 30 });
  });

  it('say in numbers what other orders hold', async () => {
    await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    const line = await story.lineOf(second.orderId, second.lineId);
    expect(line.shortUnits).toBe(6);
    expect(line.reasons).toEqual([{ reason: 'promised', units: 8, codes: [first.code], day: null }]);
  });

  it('say when nothing of an item is grown at all', async () => {
    const { orderId, lineId } = await story.order([{ units: 3 }]);
    expect((await story.lineOf(orderId, lineId)).reasons).toEqual([
      { reason: 'not-grown', units: 3, codes: ['tall-1l'], day: null },
    ]);
  });

  it('are filled from plants that come in later', async () => {
    const { orderId, lineId } = await story.order([{ units: 3 }]);
    const lotId = await story.addLot({ units: 10 });
    await nursery.as('crew').stock.countLot(
      sent({
        lotId,
        placeId: story.placeId,
        countedUnits: 12,
        countKind: 'counted' as const,
        happenedOn: '2026-05-20',
      }),
    );
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 3 });
    expect((await story.read(orderId)).shortUnits).toBe(0);
  });

  it('cost nothing where an entry changes none of them', async () => {
    const lotId = await story.addLot({ units: 40 });
    await story.order([{ units: 3 }]);
    await story.lose(lotId, 5);
    const [log] = await nursery.sql<{ held: string }>(
      `SELECT count(*) AS held FROM reservation WHERE nursery_id = $1 AND xmin::text::bigint = (SELECT max(xmin::text::bigint) FROM command WHERE nursery_id = $1)`,
      [nursery.nurseryId],
    );
    expect(log?.held).toBe('0');
  });

  it('are looked at again when the day rolls over', async () => {
    const soon = await story.addLot({ units: 10, plantByOn: '2026-06-03' });
    const { lineId } = await story.order([{ units: 5 }]);
    expect(await story.heldBy(lineId)).toEqual({ [soon]: 5 });
    const other = await story.addLot({ units: 10 });
    nursery.clock.set('2026-06-04');
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody' }));
    expect(await story.heldBy(lineId)).toEqual({ [other]: 5 });
  });
});
