import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { packsInTheCold } from '../../support/packs.ts';

const today = '2026-05-20';

describe('what a line asks of the plants themselves', () => {
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

  const sourceWith = async (columns: string) => {
    const sourceId = await story.addSource(story.plantId);
    await nursery.sql(`UPDATE source SET ${columns} WHERE nursery_id = $1 AND id = $2`, [nursery.nurseryId, sourceId]);
    return sourceId;
  };
  const reasonsOf = async ({ orderId, lineId }: { orderId: string; lineId: string }) =>
    (await story.lineOf(orderId, lineId)).reasons.map(({ reason, units }) => `${reason} ${units}`).sort();
  const treat = (lotIds: string[], happened = `${today}T12:00:00Z`) =>
    nursery.as('grower').stock.treatLots(sent({ lotIds, product: 'Soap', applicator: 'Robin', treatedAt: happened }));

  it('a seed zone is met only by sources of that zone', async () => {
    const right = await story.addLot({ units: 5, sourceId: await sourceWith(`seed_zone = '3a'`) });
    await story.addLot({ units: 6, sourceId: await sourceWith(`seed_zone = '5b'`) });
    await story.addLot({ units: 7, sourceId: await sourceWith('seed_zone = NULL') });
    const order = await story.order([{ units: 20, seedZone: '3a' }]);
    expect(await story.heldBy(order.lineId)).toEqual({ [right]: 5 });
    expect(await reasonsOf(order)).toEqual(['provenance-unknown 7', 'provenance-zone 6']);
  });

  it('wild type is met by wild sources, not by cultivars nor by what nobody knows', async () => {
    const wild = await story.addLot({ units: 5, sourceId: await sourceWith(`origin = 'wild'`) });
    await story.addLot({ units: 6, sourceId: await sourceWith(`origin = 'cultivated'`) });
    const order = await story.order([{ units: 20, wildType: true }]);
    expect(await story.heldBy(order.lineId)).toEqual({ [wild]: 5 });
    expect(await reasonsOf(order)).toEqual(['wild-type-unknown 6']);
  });

  it('untreated is met by what was raised here and never treated', async () => {
    await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
    const clean = await story.addLot({ units: 5 });
    const treated = await story.addLot({ units: 6 });
    await story.addLot({ units: 7, sourceId: await sourceWith(`kind = 'bought-plants'`) });
    const stated = await story.addLot({
      units: 2,
      sourceId: await sourceWith(`kind = 'bought-plants', pesticide_statement = 'Untreated.'`),
    });
    await treat([treated]);
    const order = await story.order([{ units: 20, untreated: true }]);
    expect(await story.heldBy(order.lineId)).toEqual({ [clean]: 5, [stated]: 2 });
    expect(await reasonsOf(order)).toEqual(['treated 6', 'treatment-unknown 7']);
  });

  it('a treatment goes with the plants that came of the treated lot, not with those taken before', async () => {
    await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
    const parent = await story.addLot({ units: 30 });
    const split = async (happenedOn: string) => {
      const newLotId = randomUUID();
      await nursery
        .as('grower')
        .stock.splitLot(
          sent({ lotId: parent, into: [{ lotId: newLotId, placeId: story.placeId, units: 5 }], happenedOn }),
        );
      return newLotId;
    };
    const before = await split('2026-05-10');
    await treat([parent], '2026-05-15T12:00:00Z');
    await split('2026-05-18');
    const { lineId } = await story.order([{ units: 50, untreated: true }]);
    expect(await story.heldBy(lineId)).toEqual({ [before]: 5 });
  });

  it('a treatment goes with the seed drawn from treated packs, not with what was drawn before', async () => {
    await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
    const { propagation, stock } = nursery.as('grower');
    const { coldId, packsId, draw } = await packsInTheCold(nursery, story);
    const before = await draw('2026-03-01', { cautiousUnits: 8, readyOn: today });
    await stock.treatPlace(
      sent({ placeId: coldId, product: 'Soap', applicator: 'Robin', treatedAt: '2026-03-05T12:00:00Z' }),
    );
    const after = await draw('2026-03-10', { cautiousUnits: 9, readyOn: today });
    const { lineId } = await story.order([{ units: 50, untreated: true }]);
    expect(await story.heldBy(lineId)).toEqual({ [before]: 8 });

    const lotId = randomUUID();
    await propagation.potBatch(
      sent({
        batchId: after,
        happenedOn: today,
        firstAlive: '2026-04',
        lots: [{ lotId, containerId: story.containerId, placeId: story.placeId, unitsOut: 10, pottedUnits: 10 }],
      }),
    );
    expect((await stock.readLot({ lotId })).treatments).toMatchObject([
      { product: 'Soap', on: { kind: 'batch', id: packsId } },
    ]);
  });

  it('a treatment that was taken back counts no more', async () => {
    await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
    const lotId = await story.addLot({ units: 30 });
    const { entryId } = await treat([lotId]);
    const { lineId } = await story.order([{ units: 5, untreated: true }]);
    expect(await story.heldBy(lineId)).toEqual({});
    await nursery.as('grower').stock.reverseEntry(sent({ entryId }));
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 5 });
  });

  it('also counts for whoever pulls by hand', async () => {
    const lotId = await story.addLot({ units: 5, sourceId: await sourceWith(`seed_zone = '5b'`) });
    const { orderId, lineId } = await story.order([{ units: 5, seedZone: '3a' }]);
    const refusal = await refusalOf(story.pull(orderId, [{ lineId, lotId, units: 1 }]));
    expect(refusal).toMatchObject({ code: 'does-not-serve', field: 'lotId' });
    expect(refusal.data?.reasons).toEqual(['provenance-zone']);
  });
});
