import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { readFreshPlan } from '../../../support/fresh-plan.ts';
import { type GardenStory, gardenStory } from '../../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';

describe('plants in plug trays', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  let trayId: string;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    trayId = await story.addContainer({ code: 'plug-72', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });
    return () => nursery.close();
  });
  afterAll(() => database.drop());

  const trays = (units: number, more: object = {}) => ({ units, containerId: trayId, ...more });
  const check = (units: number) =>
    nursery.as('viewer').promises.checkPromise({
      plantId: story.plantId,
      containerId: trayId,
      siteId: story.siteId,
      clientId: story.clientId,
      on: '2026-06-01',
      units,
    });

  it('are promised in whole trays only: of 100 in trays of 72 one tray goes to a line for two', async () => {
    const lotId = await story.addLot({ units: 100, containerId: trayId });
    const { orderId, lineId } = await story.order([trays(144)]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 72 });
    expect((await story.lineOf(orderId, lineId)).reasons).toMatchObject([{ reason: 'no-whole-tray', units: 28 }]);
  });

  it('of two lots never share a tray', async () => {
    const lots = [
      await story.addLot({ units: 71, containerId: trayId }),
      await story.addLot({ units: 80, containerId: trayId }),
    ];
    const { lineId } = await story.order([trays(144)]);
    expect(await story.heldBy(lineId)).toEqual({ [lots[1] ?? '']: 72 });
  });

  it('are given up by whole trays when some are lost', async () => {
    const lotId = await story.addLot({ units: 144, containerId: trayId });
    const { lineId } = await story.order([trays(144)]);
    await story.lose(lotId, 1);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 72 });
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored).toEqual(fresh);
  });

  it('that were pulled leave the line the whole trays that are still open', async () => {
    const lotId = await story.addLot({ units: 300, containerId: trayId });
    const { orderId, lineId } = await story.order([trays(216)]);
    await story.pull(orderId, [{ lineId, lotId, units: 100 }], { confirmed: true });
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 72 });
    expect((await story.lineOf(orderId, lineId)).reasons).toMatchObject([{ reason: 'no-whole-tray' }]);
    // The line may end at what has happened.
    await nursery.as('grower').promises.editLine(sent({ lineId, units: 100 }));
    expect(await story.heldBy(lineId)).toEqual({});
  });

  it('are asked for in whole trays, and the numbers next to it are named beside the field', async () => {
    expect(await refusalOf(story.order([{ units: 3 }, trays(100)]))).toMatchObject({
      code: 'whole-trays-only',
      field: 'lines.1.units',
      data: { cells: 72, below: 72, above: 144 },
    });
    const { orderId, lineId } = await story.order([trays(72)]);
    const { orders, promises } = nursery.as('grower');
    expect(
      await refusalOf(orders.addLine(sent({ orderId, lineId: randomUUID(), plantId: story.plantId, ...trays(30) }))),
    ).toMatchObject({ code: 'whole-trays-only', field: 'units', data: { below: null, above: 72 } });
    expect(await refusalOf(promises.editLine(sent({ lineId, units: 73 })))).toMatchObject({
      code: 'whole-trays-only',
      field: 'units',
    });
    expect(
      await refusalOf(
        nursery.as('viewer').promises.whatIf({
          kind: 'add-order',
          plantId: story.plantId,
          containerId: trayId,
          units: 50,
          dueOn: '2026-06-01',
        }),
      ),
    ).toMatchObject({ code: 'whole-trays-only', field: 'units' });
  });

  it('never stand in for plants in pots, nor for trays of other cells', async () => {
    const smallId = await story.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 110, cells: 50 });
    const other = (containerId: string) => [{ plantId: story.plantId, containerId }];
    expect(await refusalOf(story.order([{ units: 72, alternatives: other(trayId) }]))).toMatchObject({
      code: 'other-trays',
      field: 'lines.0.alternatives.0.containerId',
      data: { container: 'plug-72', cells: 72, asked: null },
    });
    expect(await refusalOf(story.order([trays(72, { alternatives: other(smallId) })]))).toMatchObject({
      code: 'other-trays',
      data: { container: 'plug-50', cells: 50, asked: 72 },
    });
    const deepId = await story.addContainer({ code: 'plug-72-deep', kind: 'tray', volumeMl: 90, cells: 72 });
    const lotId = await story.addLot({ units: 75, containerId: deepId });
    const { lineId } = await story.order([trays(72, { alternatives: other(deepId) })]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 72 });
  });

  it('are tied to a line in whole trays', async () => {
    const lotId = await story.addLot({ units: 200, containerId: trayId });
    const { lineId } = await story.order([trays(144)]);
    const { promises } = nursery.as('grower');
    expect(await refusalOf(promises.pinReservation(sent({ lineId, supplyId: lotId, units: 100 })))).toMatchObject({
      code: 'whole-trays-only',
      field: 'units',
      data: { below: 72, above: 144 },
    });
    await promises.pinReservation(sent({ lineId, supplyId: lotId, units: 72 }));
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 72, [lotId]: 72 });
    expect((await promises.offersFor({ lineId })).offers).toMatchObject([
      { onHandUnits: 200, reservedUnits: 144, freeUnits: 0 },
    ]);
    expect((await promises.explainLine({ lineId })).rows).toMatchObject([{ units: 72 }, { units: 72 }]);
  });

  it('are checked by whole trays while they are typed', async () => {
    const lotId = await story.addLot({ units: 220, containerId: trayId });
    await story.addLot({ units: 500 });
    const { code } = await story.order([trays(72)]);
    expect(await check(144)).toMatchObject({
      askedUnits: 144,
      cells: 72,
      units: 144,
      from: [{ supplyId: lotId, units: 144 }],
      reasons: [],
    });
    expect(await check(100)).toMatchObject({ askedUnits: 72, units: 72 });
    expect(await check(30)).toMatchObject({ askedUnits: 72, units: 72 });
    expect(await check(216)).toMatchObject({
      units: 144,
      instead: [],
      reasons: [
        { reason: 'no-whole-tray', units: 4 },
        { reason: 'promised', units: 72, codes: [code] },
      ],
    });
  });

  it('of an earlier line that is no multiple are served by its whole trays, the rest is short', async () => {
    const lotId = await story.addLot({ units: 144, containerId: trayId });
    const { orderId, lineId } = await story.order([trays(144)]);
    await nursery.sql('UPDATE order_line SET units = 100 WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      lineId,
    ]);
    await story.lose(lotId, 70);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 72 });
    expect(await story.lineOf(orderId, lineId)).toMatchObject({
      shortUnits: 28,
      reasons: expect.arrayContaining([expect.objectContaining({ reason: 'no-whole-tray' })]),
    });
    const next = await story.order([trays(72)]);
    expect(await story.heldBy(next.lineId)).toEqual({});
  });

  it('of a batch count by the whole trays of its cautious yield', async () => {
    const batchId = randomUUID();
    await nursery.as('grower').propagation.startBatch(
      sent({
        batchId,
        plantId: story.plantId,
        sourceId: story.sourceId,
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId: trayId,
        units: 288,
        placeId: story.placeId,
        happenedOn: '2026-03-01',
        targetContainerId: trayId,
        cautiousUnits: 200,
        readyOn: '2026-05-25',
      }),
    );
    const { lineId } = await story.order([trays(288)]);
    expect(await story.heldBy(lineId)).toEqual({ [batchId]: 144 });
  });
});
