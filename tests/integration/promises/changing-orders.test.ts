import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

describe('changing an order', () => {
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
  const by = (role: 'owner' | 'grower' = 'grower') => nursery.as(role);
  const rankOf = async ({ orderId, lineId }: { orderId: string; lineId: string }) =>
    (await story.lineOf(orderId, lineId)).rank;

  it('to a day that nobody minds keeps its turn and its plants', async () => {
    const lotId = await story.addLot({ units: 20, plantByOn: '2026-08-01' });
    const order = await story.order([{ units: 8 }]);
    await story.order([{ units: 8 }]);
    expect(await by().promises.changeDay(sent({ orderId: order.orderId, dueOn: '2026-07-15' }))).toMatchObject({
      keepsRank: true,
    });
    expect([await rankOf(order), await story.heldBy(order.lineId)]).toEqual([1, { [lotId]: 8 }]);
    expect((await story.read(order.orderId)).dueOn).toBe('2026-07-15');
  });

  it('to a day on which its plants are past their pots is refused with what it would lose, and passes when that is accepted', async () => {
    await story.addLot({ units: 20, plantByOn: '2026-06-15' });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    const refusal = await refusalOf(by().promises.changeDay(sent({ orderId, dueOn: '2026-07-01' })));
    expect(refusal).toMatchObject({
      code: 'would-shorten',
      data: { lines: [{ lineId, filledNow: 8, filledThen: 0, shorterBy: 8 }] },
    });
    expect((await story.read(orderId)).dueOn).toBe('2026-06-01');
    expect(
      (
        await refusalOf(
          by().promises.changeDay(sent({ orderId, dueOn: '2026-07-01', acceptedShortages: [{ lineId, units: 7 }] })),
        )
      ).code,
    ).toBe('would-shorten');
    await by().promises.changeDay(sent({ orderId, dueOn: '2026-07-01', acceptedShortages: [{ lineId, units: 8 }] }));
    expect(await story.read(orderId)).toMatchObject({ dueOn: '2026-07-01', shortUnits: 8 });
  });

  it('goes behind all others where keeping its turn would take their plants', async () => {
    await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const late = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    const early = await story.order([{ units: 8 }], { dueOn: '2026-06-01' });
    const tried = await nursery
      .as('viewer')
      .promises.whatIf({ kind: 'move-order', orderId: late.orderId, dueOn: '2026-06-01' });
    expect(tried).toMatchObject({
      keepsRank: false,
      lines: [{ lineId: late.lineId, filledNow: 0, filledThen: 2, shorterBy: 0 }],
    });
    expect(await by().promises.changeDay(sent({ orderId: late.orderId, dueOn: '2026-06-01' }))).toMatchObject({
      keepsRank: false,
    });
    expect([await rankOf(late), await rankOf(early)]).toEqual([3, 2]);
    expect([(await story.read(late.orderId)).reservedUnits, (await story.read(early.orderId)).reservedUnits]).toEqual([
      2, 8,
    ]);
  });

  it('keeps its turn against others only at the owner’s word, who sees the names', async () => {
    await story.addLot({ units: 10, plantByOn: '2026-06-15' });
    const late = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    const early = await story.order([{ units: 8 }], { dueOn: '2026-06-01' });
    const wish = { orderId: late.orderId, dueOn: '2026-06-01', keepRank: true };
    expect(await refusalOf(by('grower').promises.changeDay(sent(wish)))).toMatchObject({
      code: 'not-allowed',
      field: 'keepRank',
    });
    expect(await refusalOf(by('owner').promises.changeDay(sent(wish)))).toMatchObject({
      code: 'would-shorten',
      data: { lines: [{ lineId: early.lineId, orderCode: early.code, clientName: 'Fen Hollow', shorterBy: 6 }] },
    });
    expect(
      await by('owner').promises.changeDay(sent({ ...wish, acceptedShortages: [{ lineId: early.lineId, units: 6 }] })),
    ).toMatchObject({ keepsRank: true });
    expect([(await story.read(late.orderId)).reservedUnits, (await story.read(early.orderId)).reservedUnits]).toEqual([
      8, 2,
    ]);
  });

  it('asks for more plants and keeps its turn where there are enough', async () => {
    await story.addLot({ units: 20 });
    const order = await story.order([{ units: 8 }]);
    await story.order([{ units: 8 }]);
    expect(await by().promises.editLine(sent({ lineId: order.lineId, units: 12 }))).toMatchObject({ keepsRank: true });
    expect((await story.read(order.orderId)).reservedUnits).toBe(12);
  });

  it('asks for more plants and goes last where that would shorten somebody else', async () => {
    await story.addLot({ units: 20 });
    const order = await story.order([{ units: 8 }]);
    const other = await story.order([{ units: 8 }]);
    expect(await by().promises.editLine(sent({ lineId: order.lineId, units: 16 }))).toMatchObject({ keepsRank: false });
    expect([(await story.read(order.orderId)).reservedUnits, (await story.read(other.orderId)).reservedUnits]).toEqual([
      12, 8,
    ]);
  });

  it('asks for fewer plants and frees the rest for others', async () => {
    await story.addLot({ units: 10 });
    const order = await story.order([{ units: 8 }]);
    const other = await story.order([{ units: 8 }]);
    await by().promises.editLine(sent({ lineId: order.lineId, units: 3 }));
    expect([(await story.read(order.orderId)).reservedUnits, (await story.read(other.orderId)).reservedUnits]).toEqual([
      3, 7,
    ]);
  });

  it('cannot want fewer than were pulled and planted already', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await story.pull(orderId, [{ lineId, lotId, units: 5 }]);
    await nursery
      .as('crew')
      .gardens.plantOrder(sent({ orderId, happenedOn: '2026-05-20', rows: [{ lineId, lotId, units: 2 }] }));
    expect(await refusalOf(by().promises.editLine(sent({ lineId, units: 4 })))).toEqual({
      code: 'below-what-happened',
      data: { least: 5, staged: 3, delivered: 2 },
      field: 'units',
    });
  });

  it('takes another plant as well, and is served from it at once', async () => {
    const other = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const lotId = await story.addLot({ units: 10, plantId: other });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await by().promises.editLine(
      sent({ lineId, units: 8, alternatives: [{ plantId: other, containerId: story.containerId, penalty: 2 }] }),
    );
    expect(await story.heldBy(lineId)).toEqual({ [lotId]: 8 });
    expect((await story.lineOf(orderId, lineId)).alternatives).toEqual([
      {
        plantId: other,
        scientificName: 'Asclepias incarnata',
        containerId: story.containerId,
        containerCode: 'tall-1l',
        penalty: 2,
      },
    ]);
  });

  it('to conditions that its plants do not meet is refused with what it would lose', async () => {
    await story.addLot({ units: 10 });
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    expect(await refusalOf(by().promises.editLine(sent({ lineId, units: 8, seedZone: '3a' })))).toMatchObject({
      code: 'would-shorten',
      data: { lines: [{ lineId, shorterBy: 8 }] },
    });
    await by().promises.editLine(sent({ lineId, units: 8, seedZone: '3a', acceptedShortages: [{ lineId, units: 8 }] }));
    expect(await story.read(orderId)).toMatchObject({ shortUnits: 8 });
  });

  it('to untreated plants looks at treatments though no line asked about them before', async () => {
    await nursery.sql('UPDATE plant SET larval_host = false WHERE nursery_id = $1', [nursery.nurseryId]);
    const lotId = await story.addLot({ units: 10 });
    await nursery
      .as('grower')
      .stock.treatLots(
        sent({ lotIds: [lotId], product: 'Soap', applicator: 'Robin', treatedAt: '2026-05-20T12:00:00Z' }),
      );
    const { lineId } = await story.order([{ units: 8 }]);
    expect((await refusalOf(by().promises.editLine(sent({ lineId, units: 8, untreated: true })))).code).toBe(
      'would-shorten',
    );
  });
});
