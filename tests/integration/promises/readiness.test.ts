import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { readFreshPlan } from '../../support/fresh-plan.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

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

const check = (lotId: string, result: 'holds' | 'not-yet', readyOn: string | null = null) =>
  nursery
    .as('crew')
    .stock.observeMany(sent({ lotIds: [lotId], kind: 'root-ball' as const, result, readyOn, happenedOn: today }));
const readyOn = async (lotId: string) => (await nursery.as('viewer').stock.readLot({ lotId })).readyOn;
const ask = () =>
  nursery
    .as('viewer')
    .promises.checkPromise({ plantId: story.plantId, containerId: story.containerId, units: 8, on: '2026-06-01' });
const item = () => ({ plantId: story.plantId, containerId: story.containerId, placeId: story.placeId });

describe('a lot without a day', () => {
  it('serves nobody once its root ball fell apart, in the plan, in what is asked and in what is tried', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
    await check(lotId, 'not-yet');
    expect(await readyOn(lotId)).toBeNull();
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.lineOf(orderId, lineId)).reasons).toMatchObject([
      { reason: 'not-ready', units: 10, day: null },
    ]);
    expect(await ask()).toMatchObject({ units: 0, firstOn: null, reasons: [{ reason: 'not-ready', day: null }] });
    expect((await nursery.as('viewer').promises.offersFor({ lineId })).offers).toEqual([]);
    const { lines } = await nursery.as('viewer').promises.demandFor({ supplyId: lotId });
    expect(lines).toMatchObject([{ lineId, serves: false, reasons: ['not-ready'], needs: { fromOn: null } }]);
    const tried = await nursery.as('viewer').promises.whatIf({ kind: 'move-order', orderId, dueOn: '2026-09-01' });
    expect(tried.lines).toMatchObject([{ lineId, filledThen: 0 }]);
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored).toEqual(fresh);
    expect((await nursery.as('viewer').potLife.readBoard({})).rows.find((row) => row.id === lotId)).toMatchObject({
      readyOn: null,
      rootCheckedOn: null,
    });

    await check(lotId, 'not-yet', '2026-05-28');
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
    await check(lotId, 'holds');
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
  });

  it('serves nobody after it was potted up with the day left blank, until its root ball holds', async () => {
    const from = await story.addContainer({ code: 'plug', volumeMl: 100 });
    const plugs = await story.addLot({ units: 10, containerId: from });
    const lotId = randomUUID();
    await nursery.as('crew').stock.potUpLot(
      sent({
        lotId: plugs,
        happenedOn: today,
        into: [{ lotId, containerId: story.containerId, placeId: story.placeId, units: 10 }],
      }),
    );
    const { lineId } = await story.order([{ units: 8 }]);
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await ask()).units).toBe(0);
    await check(lotId, 'holds');
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
  });

  it('keeps what is tied to it, since that is somebody’s own choice', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 8 }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 5 }));
    await check(lotId, 'not-yet');
    expect(await story.heldBy(lineId)).toEqual({ [`${lotId}*`]: 5 });
  });
});

describe('what comes into the nursery as it stands', () => {
  it('is expected to be ready since it stood so, checked or not', async () => {
    const [opened, bought] = [randomUUID(), randomUUID()];
    const { stock } = nursery.as('grower');
    await stock.receiveOpening(
      sent({ happenedOn: today, rows: [{ lotId: opened, ...item(), units: 5, since: '2026-04-10' }] }),
    );
    await stock.receiveBought(
      sent({
        happenedOn: today,
        quarantine: false,
        lines: [{ lotId: bought, ...item(), form: 'pots' as const, receivedUnits: 4 }],
      }),
    );
    expect([
      await readyOn(opened),
      (await nursery.as('viewer').stock.readLot({ lotId: opened })).rootCheckedOn,
    ]).toEqual(['2026-04-10', null]);
    const { lineId } = await story.order([{ units: 9 }]);
    expect(await story.heldBy(lineId)).toEqual({ [opened]: 5, [bought]: 4 });
  });

  it('is so again when its only check is taken back, also where the check had found no day', async () => {
    const opened = randomUUID();
    await nursery
      .as('grower')
      .stock.receiveOpening(
        sent({ happenedOn: today, rows: [{ lotId: opened, ...item(), units: 5, since: '2026-04-10' }] }),
      );
    await nursery.sql('UPDATE lot SET ready_on = NULL WHERE nursery_id = $1 AND id = $2', [nursery.nurseryId, opened]);
    const { entryId } = await check(opened, 'not-yet');
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(await readyOn(opened)).toBe('2026-04-10');
  });
});
