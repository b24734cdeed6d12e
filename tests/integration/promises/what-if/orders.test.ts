import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { whatIfStory } from './story.ts';

describe('a change of orders that is tried', () => {
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
  const short = ({
    lineId,
    filledNow,
    filledThen,
    shorterBy,
    shortThen,
  }: {
    lineId: string;
    filledNow: number;
    filledThen: number;
    shorterBy: number;
    shortThen: number;
  }) => ({ lineId, filledNow, filledThen, shorterBy, shortThen });

  describe('an order that moves', () => {
    it('past the plant-by day of its plants loses them, goes on to others that can wait, and says how many it lacks and why', async () => {
      const soon = await story.addLot({ units: 8, plantByOn: '2026-06-15' });
      const later = await story.addLot({ units: 5, plantByOn: '2026-09-01' });
      const order = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({
        kind: 'move-order',
        orderId: order.orderId,
        dueOn: '2026-07-01',
      });
      expect(answer.keepsRank).toBe(true);
      expect(answer.lines).toMatchObject([
        {
          lineId: order.lineId,
          standing: 'stays',
          dueOn: '2026-07-01',
          filledNow: 8,
          filledThen: 5,
          shorterBy: 3,
          shortThen: 3,
          givesUp: [{ code: await codeOf(soon), units: 8, why: 'past-plant-by' }],
          takes: [{ code: await codeOf(later), units: 5, orders: [] }],
          reasons: [{ reason: 'past-plant-by', units: 8, codes: [await codeOf(soon)], day: '2026-06-15' }],
        },
      ]);
      expect(answer.totals).toEqual({ shortNow: 0, shortThen: 3, decliningNow: 5, decliningThen: 8 });
      expect(told).toEqual(really);
      expect(really).toEqual({ [order.lineId]: { [later]: 5 } });
    });

    it('to a day on which others hold the plants goes behind them and says so', async () => {
      await story.addLot({ units: 10, plantByOn: '2026-06-15' });
      const late = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
      const early = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({
        kind: 'move-order',
        orderId: late.orderId,
        dueOn: '2026-06-01',
      });
      expect(answer).toMatchObject({ keepsRank: false, unchangedLines: 1 });
      expect(answer.lines.map(short)).toEqual([
        { lineId: late.lineId, filledNow: 0, filledThen: 2, shorterBy: 0, shortThen: 6 },
      ]);
      expect(answer.lines[0]?.reasons).toEqual([{ reason: 'promised', units: 8, codes: [early.code], day: null }]);
      expect(told).toEqual(really);
    });

    it('and keeps its turn all the same takes them from those others, who are named', async () => {
      const lotId = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
      const late = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
      const early = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({
        kind: 'move-order',
        orderId: late.orderId,
        dueOn: '2026-06-01',
        keepRank: true,
      });
      expect(answer).toMatchObject({
        keepsRank: true,
        lines: [
          { lineId: late.lineId, filledNow: 0, filledThen: 8 },
          {
            lineId: early.lineId,
            shorterBy: 6,
            givesUp: [{ supplyId: lotId, units: 6, why: 'to-others', orders: [late.code] }],
          },
        ],
      });
      expect(told).toEqual(really);
    });

    it('away from its plants frees them for an order that is short', async () => {
      const lotId = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
      const first = await story.order([{ units: 8 }]);
      const second = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({
        kind: 'move-order',
        orderId: first.orderId,
        dueOn: '2026-08-01',
      });
      expect(answer.lines.map(short)).toEqual([
        { lineId: first.lineId, filledNow: 8, filledThen: 0, shorterBy: 8, shortThen: 8 },
        { lineId: second.lineId, filledNow: 2, filledThen: 8, shorterBy: 0, shortThen: 0 },
      ]);
      expect(answer.lines[1]?.takes).toEqual([
        { supplyId: lotId, supplyKind: 'lot', code: await codeOf(lotId), units: 6, orders: [first.code] },
      ]);
      expect(told).toEqual(really);
    });
  });

  describe('an order that is cancelled', () => {
    it('leaves its plants to those behind it, by code', async () => {
      const lotId = await story.addLot({ units: 10 });
      const first = await story.order([{ units: 8 }]);
      const second = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'cancel-order', orderId: first.orderId });
      expect(answer.lines).toMatchObject([
        {
          lineId: first.lineId,
          standing: 'gone',
          filledNow: 8,
          filledThen: 0,
          shorterBy: 0,
          shortThen: 0,
          givesUp: [{ supplyId: lotId, units: 8, why: 'order-gone' }],
          takes: [],
        },
        {
          lineId: second.lineId,
          standing: 'stays',
          filledNow: 2,
          filledThen: 8,
          takes: [{ supplyId: lotId, units: 6, orders: [first.code] }],
        },
      ]);
      expect(answer.totals).toMatchObject({ shortNow: 6, shortThen: 0 });
      expect(told).toEqual(really);
    });

    it('with pulled plants asks where they go, and counts them there', async () => {
      const lotId = await story.addLot({ units: 10 });
      const first = await story.order([{ units: 8 }]);
      const second = await story.order([{ units: 8 }]);
      await story.pull(first.orderId, [{ lineId: first.lineId, lotId, units: 5 }]);
      const change = { kind: 'cancel-order' as const, orderId: first.orderId };
      expect(await refusalOf(story.ask(change))).toEqual({
        code: 'plants-are-staged',
        data: { order: first.code, units: 5 },
        field: 'placeId',
      });
      const inQuarantine = await story.ask({ ...change, placeId: story.quarantineId });
      expect(inQuarantine.lines.map(short)).toContainEqual({
        lineId: second.lineId,
        filledNow: 2,
        filledThen: 5,
        shorterBy: 0,
        shortThen: 3,
      });
      const { answer, really, told } = await story.askThenKeep({ ...change, placeId: story.placeId });
      expect(answer.lines.map(short)).toContainEqual({
        lineId: second.lineId,
        filledNow: 2,
        filledThen: 8,
        shorterBy: 0,
        shortThen: 0,
      });
      expect(told).toEqual(really);
    });
  });

  describe('a new order', () => {
    it('takes what is free and nothing of anybody else’s, and says what it lacks', async () => {
      const lotId = await story.addLot({ units: 30 });
      const { code } = await story.order([{ units: 12 }]);
      const { answer, lineId, really, told } = await story.askThenKeep({
        kind: 'add-order',
        ...item(),
        units: 200,
        dueOn: '2026-06-10',
        clientId: story.clientId,
        siteId: story.siteId,
      });
      expect(answer.lines).toMatchObject([
        {
          standing: 'added',
          orderCode: '',
          clientName: 'Fen Hollow',
          filledNow: 0,
          filledThen: 18,
          shortThen: 182,
          takes: [{ supplyId: lotId, units: 18, orders: [] }],
          reasons: [{ reason: 'promised', units: 12, codes: [code] }],
        },
      ]);
      expect(answer.unchangedLines).toBe(1);
      expect(told).toEqual(really);
      expect(really[lineId]).toEqual({ [lotId]: 18 });
    });

    it('may give an earlier order other plants, so that both are filled', async () => {
      const lotId = await story.addLot({ units: 8, plantByOn: '2026-07-15' });
      const { batchId, code: batch } = await story.startBatch();
      const earlier = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
      expect(await story.held()).toEqual({ [earlier.lineId]: { [lotId]: 8 } });
      const { answer, really, told, lineId } = await story.askThenKeep({
        kind: 'add-order',
        ...item(),
        units: 8,
        dueOn: '2026-06-05',
        clientId: story.clientId,
      });
      expect(answer.lines).toMatchObject([
        {
          standing: 'added',
          filledThen: 8,
          shortThen: 0,
          takes: [{ supplyId: lotId, units: 8, orders: [earlier.code] }],
        },
        {
          lineId: earlier.lineId,
          filledNow: 8,
          filledThen: 8,
          shorterBy: 0,
          givesUp: [{ supplyId: lotId, units: 8, why: 'to-others', orders: [''] }],
          takes: [{ code: batch, units: 8, orders: [] }],
        },
      ]);
      expect(told).toEqual(really);
      expect(really).toEqual({ [earlier.lineId]: { [batchId]: 8 }, [lineId]: { [lotId]: 8 } });
    });

    it('counts the lead of the client who fetches it', async () => {
      await nursery
        .as('grower')
        .clients.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 10 }));
      await story.addLot({ units: 8, plantByOn: '2026-06-15' });
      const { answer, really, told } = await story.askThenKeep({
        kind: 'add-order',
        ...item(),
        units: 8,
        dueOn: '2026-06-10',
        clientId: story.clientId,
      });
      expect(answer.lines[0]).toMatchObject({
        filledThen: 0,
        reasons: [{ reason: 'past-plant-by', units: 8, day: '2026-06-05' }],
      });
      expect(told).toEqual(really);
    });
  });
});
