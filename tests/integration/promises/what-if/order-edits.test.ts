import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../../support/nursery.ts';
import { whatIfStory } from './story.ts';

describe('an edit of an order that is tried', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: Awaited<ReturnType<typeof whatIfStory>>;
  beforeAll(async () => {
    database = await createDatabase();
  });
  beforeEach(async () => {
    nursery = await openNursery(database);
    story = await whatIfStory(nursery);
    return () => nursery.close();
  });
  afterAll(() => database.drop());
  const codeOf = async (lotId: string) =>
    (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
  const item = () => ({ plantId: story.plantId, containerId: story.containerId });

  describe('a line that asks for more', () => {
    it('goes behind the others where they hold the rest, and says who does', async () => {
      await story.addLot({ units: 10 });
      const first = await story.order([{ units: 5 }]);
      const second = await story.order([{ units: 5 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'edit-line', lineId: first.lineId, units: 8 });
      expect(answer).toMatchObject({
        keepsRank: false,
        unchangedLines: 1,
        lines: [
          {
            lineId: first.lineId,
            units: 8,
            filledNow: 5,
            filledThen: 5,
            shortThen: 3,
            reasons: [{ reason: 'promised', codes: [second.code] }],
          },
        ],
      });
      expect(told).toEqual(really);
    });

    it('keeps its turn where that is wished, and names the line that loses and to whom', async () => {
      const lotId = await story.addLot({ units: 10 });
      const first = await story.order([{ units: 5 }]);
      const second = await story.order([{ units: 5 }]);
      const { answer, really, told } = await story.askThenKeep({
        kind: 'edit-line',
        lineId: first.lineId,
        units: 8,
        keepRank: true,
      });
      expect(answer).toMatchObject({
        keepsRank: true,
        lines: [
          {
            lineId: first.lineId,
            filledNow: 5,
            filledThen: 8,
            shortThen: 0,
            takes: [{ supplyId: lotId, units: 3, orders: [second.code] }],
          },
          {
            lineId: second.lineId,
            filledNow: 5,
            filledThen: 2,
            shorterBy: 3,
            givesUp: [{ code: await codeOf(lotId), units: 3, why: 'to-others', orders: [first.code] }],
          },
        ],
      });
      expect(told).toEqual(really);
    });

    it('takes what is free without touching anybody', async () => {
      await story.addLot({ units: 20 });
      const first = await story.order([{ units: 5 }]);
      await story.order([{ units: 5 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'edit-line', lineId: first.lineId, units: 8 });
      expect(answer).toMatchObject({
        keepsRank: true,
        unchangedLines: 1,
        lines: [{ lineId: first.lineId, filledThen: 8 }],
      });
      expect(told).toEqual(really);
    });
  });

  it('a line that asks for fewer leaves the rest to those behind it', async () => {
    await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    const { answer, really, told } = await story.askThenKeep({ kind: 'edit-line', lineId: first.lineId, units: 3 });
    expect(answer.lines).toMatchObject([
      { lineId: first.lineId, filledThen: 3, shorterBy: 0 },
      { lineId: second.lineId, filledNow: 2, filledThen: 7 },
    ]);
    expect(told).toEqual(really);
  });

  it('a line that asks for wild type gives up plants that are not known to be, and one that takes a stand-in gets it', async () => {
    const otherId = await story.addPlant({ name: 'Asclepias incarnata', code: 'ASIN' });
    const lotId = await story.addLot({ units: 5 });
    const standIn = await story.addLot({ units: 9, plantId: otherId });
    const { lineId } = await story.order([{ units: 8 }]);
    const taking = await story.askThenKeep({
      kind: 'edit-line',
      lineId,
      units: 8,
      alternatives: [{ plantId: otherId, containerId: story.containerId }],
    });
    expect(taking.answer.lines).toMatchObject([
      { lineId, filledNow: 5, filledThen: 8, takes: [{ supplyId: standIn, units: 3 }] },
    ]);
    expect(taking.told).toEqual(taking.really);
    await nursery.sql(`UPDATE source SET origin = 'cultivated' WHERE nursery_id = $1`, [nursery.nurseryId]);
    const asking = await story.askThenKeep({ kind: 'edit-line', lineId, units: 8, wildType: true });
    expect(asking.answer.lines[0]?.givesUp).toContainEqual(
      expect.objectContaining({ supplyId: lotId, units: 5, why: 'wild-type-unknown' }),
    );
    expect(asking.told).toEqual(asking.really);
  });

  it('a line that is withdrawn frees its plants for those behind it', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }, { units: 1 }]);
    const second = await story.order([{ units: 8 }]);
    const { answer, really, told } = await story.askThenKeep({ kind: 'withdraw-line', lineId: first.lineId });
    expect(answer.lines).toMatchObject([
      { lineId: first.lineId, standing: 'gone', givesUp: [{ supplyId: lotId, units: 8, why: 'order-gone' }] },
      {
        lineId: second.lineId,
        filledNow: 1,
        filledThen: 8,
        takes: [{ supplyId: lotId, units: 7, orders: [first.code] }],
      },
    ]);
    expect(told).toEqual(really);
  });

  it('a line that is added comes behind all others, on the day and at the site of its order', async () => {
    const soon = await story.addLot({ units: 8, plantByOn: '2026-07-15' });
    const { batchId } = await story.startBatch();
    const earlier = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
    const order = await story.order([], { dueOn: '2026-06-05' });
    const lineId = randomUUID();
    const { answer, really, told } = await story.askThenKeep({
      kind: 'add-line',
      orderId: order.orderId,
      lineId,
      ...item(),
      units: 8,
    });
    expect(answer.lines).toMatchObject([
      {
        lineId,
        standing: 'added',
        orderCode: order.code,
        clientName: 'Fen Hollow',
        dueOn: '2026-06-05',
        filledThen: 8,
      },
      {
        lineId: earlier.lineId,
        givesUp: [{ supplyId: soon, why: 'to-others', orders: [order.code] }],
        takes: [{ supplyId: batchId, units: 8 }],
      },
    ]);
    expect(told).toEqual(really);
  });

  it('an order that turns to natives gives up what is not known to be native, to one that takes it', async () => {
    await nursery.as('grower').clients.editSite(sent({ siteId: story.siteId, name: 'South slope', region: 'IA' }));
    const lotId = await story.addLot({ units: 8 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 5 }]);
    const { answer, really, told } = await story.askThenKeep({ kind: 'natives-only', orderId: first.orderId });
    expect(answer.lines).toMatchObject([
      {
        lineId: first.lineId,
        filledNow: 8,
        filledThen: 0,
        givesUp: [{ supplyId: lotId, units: 8, why: 'not-native' }],
      },
      { lineId: second.lineId, filledNow: 0, filledThen: 5 },
    ]);
    expect(told).toEqual(really);
    const back = await story.askThenKeep({ kind: 'natives-only', orderId: first.orderId, nativesOnly: false });
    expect(back.told).toEqual(back.really);
  });
});
