import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

const today = '2026-05-20';

let database: TestDatabase;
let nursery: TestNursery;
let story: GardenStory;
/** Called by the same common name as the story's plant, from another land. */
let foreignId: string;
beforeAll(async () => {
  database = await createDatabase();
});
beforeEach(async () => {
  nursery = await openNursery(database);
  story = await gardenStory(nursery);
  foreignId = await story.addPlant({ name: 'Asclepias curassavica', code: 'ASCU' });
  await nursery.sql(`UPDATE plant SET larval_host = false, vernacular_name = 'milkweed' WHERE nursery_id = $1`, [
    nursery.nurseryId,
  ]);
  await nativeTo(story.plantId, ['IA', 'WI']);
  await region('IA');
  return () => nursery.close();
});
afterAll(() => database.drop());

const by = () => nursery.as('grower');
const nativeTo = (plantId: string, nativeRegions: string[]) =>
  nursery.as('grower').plants.editPlant(sent({ plantId, nativeRegions }));
const region = (code: string | null) =>
  by().clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: code }));
const foreign = () => ({ plantId: foreignId, containerId: story.containerId });
const line = (more: object = {}) => ({
  lineId: randomUUID(),
  plantId: story.plantId,
  containerId: story.containerId,
  units: 5,
  ...more,
});
async function natives(lines: object[], more: object = {}) {
  const orderId = randomUUID();
  const rows = lines.map(line);
  await by().orders.addOrder(
    sent({
      orderId,
      clientId: story.clientId,
      siteId: story.siteId,
      kind: 'installation' as const,
      dueOn: '2026-06-01',
      nativesOnly: true,
      lines: rows,
      ...more,
    }),
  );
  return { orderId, lineId: rows[0]?.lineId ?? '' };
}
const accepting = () => ({ alternatives: [{ ...foreign(), penalty: 1 }] });

describe('an order that takes only natives', () => {
  it('refuses a plant of another land by its scientific name and the region, beside its field', async () => {
    expect(await refusalOf(natives([{}, foreign()]))).toMatchObject({
      code: 'not-native-here',
      field: 'lines.1.plantId',
      data: { plant: 'Asclepias curassavica', region: 'IA' },
    });
  });

  it('refuses such an alternative beside its own field, in a new order, a new line and a changed line', async () => {
    expect(await refusalOf(natives([accepting()]))).toMatchObject({
      code: 'not-native-here',
      field: 'lines.0.alternatives.0.plantId',
    });
    const { orderId, lineId } = await natives([{}]);
    expect(await refusalOf(by().orders.addLine(sent({ orderId, ...line(accepting()) })))).toMatchObject({
      code: 'not-native-here',
      field: 'alternatives.0.plantId',
    });
    expect(await refusalOf(by().promises.editLine(sent({ lineId, units: 5, ...accepting() })))).toMatchObject({
      code: 'not-native-here',
      field: 'alternatives.0.plantId',
    });
  });

  it('cannot be asked for where the site names no region', async () => {
    await region(null);
    expect(await refusalOf(natives([{}]))).toMatchObject({
      code: 'natives-need-region',
      field: 'nativesOnly',
      data: { site: 'South slope' },
    });
    expect(await refusalOf(natives([{}], { siteId: null, kind: 'pickup' }))).toMatchObject({
      code: 'natives-need-region',
      data: { site: null },
    });
    const { orderId } = await story.order([{ units: 5 }]);
    expect(await refusalOf(by().orders.editOrder(sent({ orderId, nativesOnly: true })))).toMatchObject({
      code: 'natives-need-region',
    });
  });

  it('gives up what breaks it when an order is changed to it, marks the line and says why it is short', async () => {
    const lotId = await story.addLot({ units: 5, ...foreign() });
    const { orderId, lineId } = await story.order([{ units: 5, ...accepting() }]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
    await by().orders.editOrder(sent({ orderId, nativesOnly: true }));
    expect(await story.heldBy(lineId)).toEqual({});
    const page = await story.read(orderId);
    expect(page).toMatchObject({ nativesOnly: true, region: 'IA' });
    expect(page.lineRows[0]).toMatchObject({
      notNatives: [{ scientificName: 'Asclepias curassavica' }],
      shortUnits: 5,
      reasons: [{ reason: 'not-native', units: 5 }],
    });
    expect(await refusalOf(story.pull(orderId, [{ lineId, lotId, units: 1 }]))).toMatchObject({
      code: 'does-not-serve',
      data: { reasons: ['not-native'] },
    });
    await by().orders.editOrder(sent({ orderId, nativesOnly: false }));
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
    expect((await story.read(orderId)).lineRows[0]).toMatchObject({ notNatives: [] });
  });

  it('gives up what a person had tied too, and lets nobody tie it again', async () => {
    const lotId = await story.addLot({ units: 9, ...foreign() });
    const { orderId, lineId } = await story.order([{ units: 5, ...accepting() }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 2 }));
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 3, [`${lotId}*`]: 2 });
    await by().orders.editOrder(sent({ orderId, nativesOnly: true }));
    expect(await story.heldBy(lineId)).toEqual({});
    expect(
      await refusalOf(nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 3 }))),
    ).toMatchObject({ code: 'does-not-serve', data: { reasons: ['not-native'] } });
  });

  it('keeps to natives when only its note is changed', async () => {
    const { orderId } = await natives([{}]);
    await by().orders.editOrder(sent({ orderId, note: 'ring first' }));
    expect(await story.read(orderId)).toMatchObject({ nativesOnly: true, note: 'ring first' });
  });

  it('is judged anew when the plant turns out not to be native, or the site lies elsewhere', async () => {
    const lotId = await story.addLot({ units: 5 });
    const { orderId, lineId } = await natives([{}]);
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
    await nativeTo(story.plantId, ['WI']);
    expect(await story.heldBy(lineId)).toEqual({});
    await region('WI');
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
    await region(null);
    expect(await story.heldBy(lineId)).toEqual({});
    expect((await story.read(orderId)).lineRows[0]).toMatchObject({
      notNatives: [{ scientificName: 'Asclepias tuberosa' }],
    });
  });

  it('is told what is free of natives alone', async () => {
    await story.addLot({ units: 5 });
    await story.addLot({ units: 7, ...foreign() });
    const offered = async (item: { plantId: string; containerId: string }, nativesOnly: boolean) => {
      const { offers } = await nursery
        .as('viewer')
        .promises.offersFor({ ...item, on: '2026-06-01', siteId: story.siteId, nativesOnly });
      return offers.map(({ freeUnits }) => freeUnits);
    };
    expect(await offered(foreign(), false)).toEqual([7]);
    expect(await offered(foreign(), true)).toEqual([]);
    expect(await offered({ plantId: story.plantId, containerId: story.containerId }, true)).toEqual([5]);
  });
});

describe('what a line accepts instead', () => {
  it('is judged as the item itself is: nothing held, and nothing treated where untreated is asked', async () => {
    const clean = await story.addLot({ units: 3, ...foreign() });
    const held = await story.addLot({ units: 4, ...foreign() });
    const treated = await story.addLot({ units: 6, ...foreign() });
    await nursery
      .as('grower')
      .stock.holdMany(sent({ lotIds: [held], reason: 'quarantine' as const, happenedOn: today }));
    await nursery
      .as('grower')
      .stock.treatLots(
        sent({ lotIds: [treated], product: 'Soap', applicator: 'Robin', treatedAt: `${today}T12:00:00Z` }),
      );
    const asked = await story.order([{ units: 20, untreated: true, ...accepting() }]);
    expect(await story.heldBy(asked.lineId)).toEqual({ [clean]: 3 });
    expect((await story.lineOf(asked.orderId, asked.lineId)).reasons).toMatchObject([
      { reason: 'held', units: 4 },
      { reason: 'treated', units: 6 },
    ]);
    const plain = await story.order([{ units: 20, ...accepting() }]);
    expect(await story.heldBy(plain.lineId)).toEqual({ [treated]: 6 });
  });
});
