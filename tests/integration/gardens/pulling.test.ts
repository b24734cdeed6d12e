import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

describe('pulling plants for an order', () => {
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
  const by = (role: 'grower' | 'crew' | 'viewer' = 'crew') => nursery.as(role);

  it('begins with a list by place, and issuing it pins the plants', async () => {
    const lotId = await story.addLot({ units: 6 });
    const yard = await story.addPlace({ code: 'ALLEY' });
    const second = await story.addLot({ units: 6, placeId: yard });
    const { orderId, lineId } = await story.order([{ units: 9 }]);
    expect(await by('grower').gardens.issuePullList(sent({ orderId }))).toMatchObject({ pinnedUnits: 9 });
    expect(Object.values(await story.heldBy(lineId)).sort()).toEqual([3, 6]);
    expect(Object.keys(await story.heldBy(lineId)).sort()).toEqual([`${lotId}*`, `${second}*`].sort());
    const list = await by('viewer').gardens.readPullList({ orderId });
    expect(list).toMatchObject({
      issuedOn: today,
      clientName: 'Fen Hollow',
      siteName: 'South slope',
      short: [],
      staged: [],
      notPotted: [],
    });
    expect(list.rows.map(({ placeCode }) => placeCode)).toEqual(['ALLEY', 'BENCH']);
    expect(list.rows.reduce((sum, { units }) => sum + units, 0)).toBe(9);
  });

  it('lays a lot that stands in several places out over them, for two lines never the same plant twice', async () => {
    const lotId = await story.addLot({ units: 10 });
    const yard = await story.addPlace({ code: 'ALLEY' });
    await nursery
      .as('crew')
      .stock.moveLot(sent({ lotId, units: 4, placeId: story.placeId, toPlaceId: yard, happenedOn: today }));
    const { orderId } = await story.order([{ units: 3 }, { units: 5 }]);
    const list = await by('viewer').gardens.readPullList({ orderId });
    expect(list.rows.map(({ placeCode, units }) => [placeCode, units]).sort()).toEqual([
      ['ALLEY', 1],
      ['ALLEY', 3],
      ['BENCH', 4],
    ]);
  });

  it('tells how each plant is handled and what can hurt', async () => {
    await nursery.sql(
      `UPDATE plant SET handling = '{leave-root-ball-intact,wear-gloves}' WHERE nursery_id = $1 AND id = $2`,
      [nursery.nurseryId, story.plantId],
    );
    await nursery.sql(
      `INSERT INTO plant_fact (nursery_id, plant_id, field, value, standing) VALUES ($1, $2, 'sapCaution', '"Its sap harms the eye."', 'from memory')`,
      [nursery.nurseryId, story.plantId],
    );
    const { orderId } = await story.order([{ units: 3 }]);
    const { plants, workCautions, short } = await by('viewer').gardens.readPullList({ orderId });
    expect(plants).toHaveLength(1);
    expect(plants[0]?.handling).toEqual(['leave-root-ball-intact', 'wear-gloves']);
    expect(plants[0]?.cautions[0]).toEqual({ text: 'Its sap harms the eye.', standing: 'from memory', source: null });
    expect(plants[0]?.cautions.some(({ text }) => text.startsWith('Milkweeds poison horses'))).toBe(true);
    expect(workCautions.some(({ text }) => text.includes('Local codes'))).toBe(true);
    expect(short.map(({ units }) => units)).toEqual([3]);
  });

  it('moves them from their place to the order’s staging and uses the reservation up', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await by('grower').gardens.issuePullList(sent({ orderId }));
    const { entryId } = await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    expect([await story.unitsOf(lotId), await story.heldBy(lineId)]).toEqual([15, { [`${lotId}*`]: 3 }]);
    const page = await story.read(orderId);
    expect(page).toMatchObject({ stagedUnits: 5, reservedUnits: 3, shortUnits: 0 });
    expect(page.entries.map(({ id, kind, units, personName }) => ({ id, kind, units, personName }))).toEqual([
      { id: entryId, kind: 'pull', units: 5, personName: 'Test crew' },
    ]);
  });

  it('is counted once though the answer was lost and it was sent again', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const body = sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, placeId: story.placeId, units: 5 }] });
    await Promise.all([by().gardens.pullForOrder(body), by().gardens.pullForOrder(body)]);
    expect(await story.unitsOf(lotId)).toBe(15);
  });

  it('takes plants another order was promised, which is then short', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    await story.pull(second.orderId, [{ lineId: second.lineId, lotId, units: 8 }]);
    expect(await story.heldBy(first.lineId)).toEqual({ [lotId]: 2 });
    expect((await story.read(first.orderId)).shortUnits).toBe(6);
  });

  it('asks once more where nobody has checked the root balls', async () => {
    const lotId = await story.addLot({ units: 10, rootCheckedOn: null, readyOn: '2026-04-14' });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const [row] = (await by('viewer').gardens.readPullList({ orderId })).rows;
    expect(row?.rootChecked).toBe(false);
    const refusal = await refusalOf(story.pull(orderId, [{ lineId, lotId, units: 8 }]));
    expect(refusal).toMatchObject({ code: 'root-ball-not-checked', data: { lots: [row?.lotCode] }, field: 'rows' });
    await story.pull(orderId, [{ lineId, lotId, units: 8 }], { confirmed: true });
    expect((await story.read(orderId)).stagedUnits).toBe(8);
  });

  it('is refused from a held lot, of another plant, and of more than is there', async () => {
    const lotId = await story.addLot({ units: 10 });
    const wrong = await story.addLot({ plantId: await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' }) });
    const held = await story.addLot({ units: 10 });
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [held], reason: 'quarantine' as const, happenedOn: today }));
    const { orderId, lineId } = await story.order([{ units: 30 }]);
    expect(await refusalOf(story.pull(orderId, [{ lineId, lotId: held, units: 1 }]))).toMatchObject({
      code: 'lot-held',
      data: { reasons: ['quarantine'] },
      field: 'lotId',
    });
    expect(await refusalOf(story.pull(orderId, [{ lineId, lotId: wrong, units: 1 }]))).toMatchObject({
      code: 'not-accepted',
      data: { accepted: ['Asclepias tuberosa, tall-1l'] },
      field: 'lotId',
    });
    expect(
      await refusalOf(
        story.pull(orderId, [
          { lineId, lotId, units: 6 },
          { lineId, lotId, units: 5 },
        ]),
      ),
    ).toMatchObject({ code: 'not-enough-units', data: { wanted: 11, available: 10 }, field: 'rows.1.units' });
    expect(await story.unitsOf(lotId)).toBe(10);
  });

  it('is refused for lines of another order, withdrawn lines, other days and ids of nobody', async () => {
    const lotId = await story.addLot({ units: 10 });
    const mine = await story.order([{ units: 3 }, { units: 3 }]);
    const other = await story.order([{ units: 3 }]);
    const [lineId = '', withdrawn = ''] = mine.lineIds;
    await by('grower').orders.withdrawLine(sent({ lineId: withdrawn }));
    const attempt = (row: object, happenedOn = today) =>
      refusalOf(
        by().gardens.pullForOrder(
          sent({
            orderId: mine.orderId,
            happenedOn,
            rows: [{ lineId, lotId, placeId: story.placeId, units: 1, ...row }],
          }),
        ),
      );
    expect(await attempt({ lineId: other.lineId })).toMatchObject({ code: 'not-found', field: 'lineId' });
    expect(await attempt({ lineId: withdrawn })).toMatchObject({ code: 'line-withdrawn', field: 'lineId' });
    expect(await attempt({ lotId: randomUUID() })).toMatchObject({ code: 'not-found', field: 'lotId' });
    expect(await attempt({ placeId: randomUUID() })).toMatchObject({ code: 'not-found', field: 'placeId' });
    expect(await attempt({}, '2026-05-21')).toMatchObject({ code: 'day-in-future', field: 'happenedOn' });
    expect(await attempt({}, '2026-04-13')).toMatchObject({ code: 'day-too-early', field: 'happenedOn' });
    expect(await attempt({ units: 0 })).toMatchObject({ code: 'invalid-input', field: 'rows.0.units' });
  });

  it('can be taken back, and the plants are promised to the line again', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const { entryId } = await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    await nursery.as('crew').stock.reverseEntry(sent({ entryId }));
    expect([await story.unitsOf(lotId), await story.heldBy(lineId)]).toEqual([10, { [lotId]: 8 }]);
  });

  it('shows on today’s list until nothing is left to pull', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }], { dueOn: '2026-05-25' });
    await story.order([{ units: 1 }], { dueOn: '2026-07-25' });
    await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    const rows = await by('viewer').gardens.listToPull({ withinDays: 7 });
    expect(
      rows.map(({ orderId: of, toPullUnits, stagedUnits, shortUnits }) => ({
        of,
        toPullUnits,
        stagedUnits,
        shortUnits,
      })),
    ).toEqual([{ of: orderId, toPullUnits: 3, stagedUnits: 5, shortUnits: 0 }]);
  });
});
