import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

describe('whether plants can be promised', () => {
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

  const check = (units: number, more: object = {}) =>
    nursery.as('viewer').promises.checkPromise({
      plantId: story.plantId,
      containerId: story.containerId,
      siteId: story.siteId,
      clientId: story.clientId,
      on: '2026-06-01',
      units,
      ...more,
    });

  it('is answered with the lots they would come from', async () => {
    const lotId = await story.addLot({ units: 9, plantByOn: '2026-06-15' });
    expect(await check(6)).toMatchObject({
      units: 6,
      firstOn: '2026-06-01',
      from: [{ supplyId: lotId, supplyKind: 'lot', units: 6, plantByOn: '2026-06-15' }],
      reasons: [],
      instead: [],
    });
  });

  it('is answered with as many as shorten nobody, and with the orders that hold the rest', async () => {
    await story.addLot({ units: 9 });
    const { code } = await story.order([{ units: 5 }]);
    expect(await check(6)).toMatchObject({
      units: 4,
      firstOn: null,
      reasons: [{ reason: 'promised', units: 5, codes: [code] }],
    });
  });

  it('counts plants for which an earlier line may take others', async () => {
    await story.addLot({ units: 9 });
    await story.addLot({ units: 5, plantByOn: '2026-06-05' });
    await story.order([{ units: 5 }], { dueOn: '2026-06-03' });
    await story.order([{ units: 9 }], { dueOn: '2026-06-03' });
    expect(await check(1, { on: '2026-06-20' })).toMatchObject({ units: 0 });
    await story.addLot({ units: 3, plantByOn: '2026-06-04' });
    expect(await check(4, { on: '2026-06-20' })).toMatchObject({ units: 3 });
  });

  it('names the first day on which all of them are ready', async () => {
    await story.addLot({ units: 4 });
    const growing = await story.addLot({ units: 4 });
    await nursery.sql('UPDATE lot SET ready_on = $3 WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      growing,
      '2026-06-20',
    ]);
    expect(await check(6)).toMatchObject({
      units: 4,
      firstOn: '2026-06-20',
      reasons: [{ reason: 'not-ready', units: 4, day: '2026-06-20' }],
    });
  });

  it('names the last day before on which all of them may still leave, the client’s lead kept', async () => {
    await story.addLot({ units: 4, plantByOn: '2026-06-15' });
    await nursery.as('grower').clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 5 }));
    expect(await check(4, { siteId: null, on: '2026-06-12' })).toMatchObject({
      units: 0,
      firstOn: null,
      lastBeforeOn: '2026-06-10',
    });
  });

  it('counts what the line takes instead, and what is tied to others as promised', async () => {
    const other = await story.addPlant({ name: 'Liatris aspera', code: 'LIAS' });
    const lotId = await story.addLot({ units: 4 });
    await story.addLot({ units: 3, plantId: other });
    const { lineId, code } = await story.order([{ units: 2 }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 2 }));
    const answer = await check(6, { alternatives: [{ plantId: other, containerId: story.containerId, penalty: 1 }] });
    expect(answer).toMatchObject({ units: 5, reasons: [{ reason: 'promised', units: 2, codes: [code] }] });
    expect(answer.from.map(({ units }) => units).sort()).toEqual([2, 3]);
  });

  it('says what else would do: the plant in another pot, or another of its genus', async () => {
    const bigger = await story.addContainer({ code: 'big-4l' });
    const sister = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    await story.addLot({ units: 7, containerId: bigger });
    await story.addLot({ units: 20, plantId: sister });
    const { instead, reasons } = await check(10);
    expect(instead.map(({ kind, plantId, containerId, units }) => ({ kind, plantId, containerId, units }))).toEqual([
      { kind: 'kin', plantId: sister, containerId: story.containerId, units: 10 },
      { kind: 'size', plantId: story.plantId, containerId: bigger, units: 7 },
    ]);
    expect(reasons.map(({ reason, units }) => ({ reason, units }))).toEqual([{ reason: 'not-grown', units: 10 }]);
  });

  it('does not offer a plant that is not native where the site lies', async () => {
    const sister = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    await nursery.sql(`UPDATE plant SET native_regions = '{WI}' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      sister,
    ]);
    await nursery.sql(`UPDATE site SET region = 'IA' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      story.siteId,
    ]);
    await story.addLot({ units: 20, plantId: sister });
    expect((await check(10)).instead).toEqual([]);
  });
});
