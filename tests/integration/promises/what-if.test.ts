import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { type Change, whatIfStory } from './what-if-story.ts';

describe('a change that is tried', () => {
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
  const codeOf = async (lotId: string) => (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
  const item = () => ({ plantId: story.plantId, containerId: story.containerId });
  const short = ({ lineId, filledNow, filledThen, shorterBy, shortThen }: { lineId: string; filledNow: number; filledThen: number; shorterBy: number; shortThen: number }) => ({ lineId, filledNow, filledThen, shorterBy, shortThen });

  it('writes nothing, whatever it is', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { batchId } = await story.startBatch();
    const { orderId } = await story.order([{ units: 8 }]);
    const state = async () => [await story.held(), await nursery.sql('SELECT version FROM nursery WHERE id = $1', [nursery.nurseryId]), await story.read(orderId)];
    const before = await state();
    const changes: Change[] = [
      { kind: 'move-order', orderId, dueOn: '2026-07-01' }, { kind: 'cancel-order', orderId }, { kind: 'add-order', ...item(), units: 200, dueOn: '2026-06-10' },
      { kind: 'lose-lot', lotId }, { kind: 'lose-batch', batchId }, { kind: 'change-batch', batchId, cautiousUnits: 1, readyOn: null },
    ];
    for (const change of changes) await story.ask(change);
    expect(await state()).toEqual(before);
  });

  describe('an order that moves', () => {
    it('past the plant-by day of its plants loses them, goes on to others that can wait, and says how many it lacks and why', async () => {
      const soon = await story.addLot({ units: 8, plantByOn: '2026-06-15' });
      const later = await story.addLot({ units: 5, plantByOn: '2026-09-01' });
      const order = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'move-order', orderId: order.orderId, dueOn: '2026-07-01' });
      expect(answer.keepsRank).toBe(true);
      expect(answer.lines).toMatchObject([{
        lineId: order.lineId, standing: 'stays', dueOn: '2026-07-01', filledNow: 8, filledThen: 5, shorterBy: 3, shortThen: 3,
        givesUp: [{ code: await codeOf(soon), units: 8, why: 'past-plant-by' }], takes: [{ code: await codeOf(later), units: 5, orders: [] }],
        reasons: [{ reason: 'past-plant-by', units: 8, codes: [await codeOf(soon)], day: '2026-06-15' }],
      }]);
      expect(answer.totals).toEqual({ shortNow: 0, shortThen: 3, decliningNow: 5, decliningThen: 8 });
      expect(told).toEqual(really);
      expect(really).toEqual({ [order.lineId]: { [later]: 5 } });
    });

    it('to a day on which others hold the plants goes behind them and says so', async () => {
      await story.addLot({ units: 10, plantByOn: '2026-06-15' });
      const late = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
      const early = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'move-order', orderId: late.orderId, dueOn: '2026-06-01' });
      expect(answer).toMatchObject({ keepsRank: false, unchangedLines: 1 });
      expect(answer.lines.map(short)).toEqual([{ lineId: late.lineId, filledNow: 0, filledThen: 2, shorterBy: 0, shortThen: 6 }]);
      expect(answer.lines[0]?.reasons).toEqual([{ reason: 'promised', units: 8, codes: [early.code], day: null }]);
      expect(told).toEqual(really);
    });

    it('away from its plants frees them for an order that is short', async () => {
      const lotId = await story.addLot({ units: 10, plantByOn: '2026-06-15' });
      const first = await story.order([{ units: 8 }]);
      const second = await story.order([{ units: 8 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'move-order', orderId: first.orderId, dueOn: '2026-08-01' });
      expect(answer.lines.map(short)).toEqual([
        { lineId: first.lineId, filledNow: 8, filledThen: 0, shorterBy: 8, shortThen: 8 },
        { lineId: second.lineId, filledNow: 2, filledThen: 8, shorterBy: 0, shortThen: 0 },
      ]);
      expect(answer.lines[1]?.takes).toEqual([{ supplyId: lotId, supplyKind: 'lot', code: await codeOf(lotId), units: 6, orders: [first.code] }]);
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
        { lineId: first.lineId, standing: 'gone', filledNow: 8, filledThen: 0, shorterBy: 0, shortThen: 0, givesUp: [{ supplyId: lotId, units: 8, why: 'order-gone' }], takes: [] },
        { lineId: second.lineId, standing: 'stays', filledNow: 2, filledThen: 8, takes: [{ supplyId: lotId, units: 6, orders: [first.code] }] },
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
      expect(await refusalOf(story.ask(change))).toEqual({ code: 'plants-are-staged', data: { order: first.code, units: 5 }, field: 'placeId' });
      const inQuarantine = await story.ask({ ...change, placeId: story.quarantineId });
      expect(inQuarantine.lines.map(short)).toContainEqual({ lineId: second.lineId, filledNow: 2, filledThen: 5, shorterBy: 0, shortThen: 3 });
      const { answer, really, told } = await story.askThenKeep({ ...change, placeId: story.placeId });
      expect(answer.lines.map(short)).toContainEqual({ lineId: second.lineId, filledNow: 2, filledThen: 8, shorterBy: 0, shortThen: 0 });
      expect(told).toEqual(really);
    });
  });

  describe('a new order', () => {
    it('takes what is free and nothing of anybody else’s, and says what it lacks', async () => {
      const lotId = await story.addLot({ units: 30 });
      const { code } = await story.order([{ units: 12 }]);
      const { answer, lineId, really, told } = await story.askThenKeep({ kind: 'add-order', ...item(), units: 200, dueOn: '2026-06-10', clientId: story.clientId, siteId: story.siteId });
      expect(answer.lines).toMatchObject([{
        standing: 'added', orderCode: '', clientName: 'Fen Hollow', filledNow: 0, filledThen: 18, shortThen: 182, takes: [{ supplyId: lotId, units: 18, orders: [] }],
        reasons: [{ reason: 'promised', units: 12, codes: [code] }],
      }]);
      expect(answer.unchangedLines).toBe(1);
      expect(told).toEqual(really);
      expect(really[lineId]).toEqual({ [lotId]: 18 });
    });

    it('may give an earlier order other plants, so that both are filled', async () => {
      const lotId = await story.addLot({ units: 8, plantByOn: '2026-07-15' });
      const { batchId, code: batch } = await story.startBatch();
      const earlier = await story.order([{ units: 8 }], { dueOn: '2026-07-01' });
      expect(await story.held()).toEqual({ [earlier.lineId]: { [lotId]: 8 } });
      const { answer, really, told, lineId } = await story.askThenKeep({ kind: 'add-order', ...item(), units: 8, dueOn: '2026-06-05', clientId: story.clientId });
      expect(answer.lines).toMatchObject([
        { standing: 'added', filledThen: 8, shortThen: 0, takes: [{ supplyId: lotId, units: 8, orders: [earlier.code] }] },
        { lineId: earlier.lineId, filledNow: 8, filledThen: 8, shorterBy: 0, givesUp: [{ supplyId: lotId, units: 8, why: 'to-others', orders: [''] }], takes: [{ code: batch, units: 8, orders: [] }] },
      ]);
      expect(told).toEqual(really);
      expect(really).toEqual({ [earlier.lineId]: { [batchId]: 8 }, [lineId]: { [lotId]: 8 } });
    });

    it('counts the lead of the client who fetches it', async () => {
      await nursery.as('grower').gardens.editClient(sent({ clientId: story.clientId, name: 'Fen Hollow', leadDays: 10 }));
      await story.addLot({ units: 8, plantByOn: '2026-06-15' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'add-order', ...item(), units: 8, dueOn: '2026-06-10', clientId: story.clientId });
      expect(answer.lines[0]).toMatchObject({ filledThen: 0, reasons: [{ reason: 'past-plant-by', units: 8, day: '2026-06-05' }] });
      expect(told).toEqual(really);
    });
  });

  describe('a lot that is lost', () => {
    it('takes from the last turn first, moves the others to what is left, and says what is gone', async () => {
      const lotId = await story.addLot({ units: 20, plantByOn: '2026-06-15' });
      const spare = await story.addLot({ units: 6, plantByOn: '2026-09-01' });
      const first = await story.order([{ units: 10 }]);
      const second = await story.order([{ units: 10 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId, units: 15 });
      expect(told).toEqual(really);
      expect(answer.lines.reduce((sum, { shorterBy }) => sum + shorterBy, 0)).toBe(9);
      expect(answer.lines.map(short)).toContainEqual({ lineId: second.lineId, filledNow: 10, filledThen: 1, shorterBy: 9, shortThen: 9 });
      const moves = answer.lines.find(({ lineId }) => lineId === first.lineId);
      expect(moves).toMatchObject({ filledNow: 10, filledThen: 10, shorterBy: 0, givesUp: [{ supplyId: lotId, why: 'gone' }], takes: [{ supplyId: spare }] });
      expect(answer.totals).toEqual({ shortNow: 0, shortThen: 9, decliningNow: 6, decliningThen: 0 });
    });

    it('wholly is closed and serves nobody', async () => {
      const lotId = await story.addLot({ units: 20 });
      const { lineId, code } = await story.order([{ units: 10 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId });
      expect(answer.lines).toMatchObject([{ lineId, orderCode: code, filledThen: 0, shorterBy: 10, givesUp: [{ why: 'gone' }], reasons: [{ reason: 'not-grown', units: 10 }] }]);
      expect([told, really]).toEqual([{}, {}]);
    });

    it('in part, where nobody is promised the rest, changes nobody', async () => {
      const lotId = await story.addLot({ units: 20 });
      await story.order([{ units: 10 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId, units: 10 });
      expect(answer).toMatchObject({ lines: [], unchangedLines: 1 });
      expect(told).toEqual(really);
    });

    it('at one of its places asks which, and counts only what may be promised', async () => {
      const lotId = await story.addLot({ units: 20 });
      await story.order([{ units: 18 }]);
      await nursery.as('crew').stock.moveLot(sent({ lotId, toPlaceId: story.quarantineId, units: 8, happenedOn: '2026-05-20' }));
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId, units: 3 }))).toMatchObject({ code: 'which-place', field: 'placeId' });
      expect((await story.ask({ kind: 'lose-lot', lotId, units: 3, placeId: story.quarantineId })).lines).toEqual([]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId, placeId: story.placeId });
      expect(answer.lines).toMatchObject([{ filledNow: 12, filledThen: 0, shorterBy: 12, reasons: [{ reason: 'held', units: 8 }] }]);
      expect(told).toEqual(really);
    });
  });

  describe('a batch', () => {
    it('that is lost in part yields no more plants than cells stand', async () => {
      const { batchId, code } = await story.startBatch();
      const { lineId } = await story.order([{ units: 50 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-batch', batchId, units: 70 });
      expect(answer.lines).toMatchObject([{ lineId, filledNow: 50, filledThen: 30, shorterBy: 20, givesUp: [{ supplyKind: 'batch', code, units: 20, why: 'gone' }] }]);
      expect([told, really]).toEqual([really, { [lineId]: { [batchId]: 30 } }]);
    });

    it('that is lost wholly is closed and serves nobody', async () => {
      const { batchId } = await story.startBatch();
      const { lineId } = await story.order([{ units: 50 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-batch', batchId });
      expect(answer.lines).toMatchObject([{ lineId, filledThen: 0, shorterBy: 50 }]);
      expect([told, really]).toEqual([{}, {}]);
    });

    it('that is ready later serves only what can wait, and says since when it could', async () => {
      const { batchId, code } = await story.startBatch();
      const soon = await story.order([{ units: 20 }], { dueOn: '2026-06-20' });
      const patient = await story.order([{ units: 20 }], { dueOn: '2026-08-01' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'change-batch', batchId, cautiousUnits: 60, readyOn: '2026-07-10' });
      expect(answer.lines).toMatchObject([{
        lineId: soon.lineId, shorterBy: 20, givesUp: [{ code, units: 20, why: 'not-ready' }], reasons: [{ reason: 'not-ready', codes: [code], day: '2026-07-10' }],
      }]);
      expect(answer.unchangedLines).toBe(1);
      expect([told, really]).toEqual([really, { [patient.lineId]: { [batchId]: 20 } }]);
    });

    it('that yields fewer plants takes from the last turn', async () => {
      const { batchId } = await story.startBatch();
      const first = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const second = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'change-batch', batchId, cautiousUnits: 35, readyOn: '2026-06-15' });
      expect(answer.lines.map(short)).toEqual([{ lineId: second.lineId, filledNow: 30, filledThen: 5, shorterBy: 25, shortThen: 25 }]);
      expect([told, really]).toEqual([really, { [first.lineId]: { [batchId]: 30 }, [second.lineId]: { [batchId]: 5 } }]);
    });

    it('that yields more fills who was short', async () => {
      const { batchId } = await story.startBatch({ cautiousUnits: 10 });
      const { lineId } = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'change-batch', batchId, cautiousUnits: 25, readyOn: '2026-06-15' });
      expect(answer.lines).toMatchObject([{ lineId, filledNow: 10, filledThen: 25, shortThen: 5, takes: [{ units: 15, orders: [] }] }]);
      expect(told).toEqual(really);
    });
  });

  describe('that makes no sense', () => {
    it('is refused beside the field: more than stands, a day that is over, an order that is done', async () => {
      const lotId = await story.addLot({ units: 20 });
      const { batchId, code: batch } = await story.startBatch();
      const { orderId, code } = await story.order([{ units: 8 }]);
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId, units: 21 }))).toEqual({ code: 'not-enough-units', data: { wanted: 21, available: 20, of: await codeOf(lotId) }, field: 'units' });
      expect(await refusalOf(story.ask({ kind: 'lose-batch', batchId, units: 101 }))).toEqual({ code: 'not-enough-units', data: { wanted: 101, available: 100, of: batch }, field: 'units' });
      expect(await refusalOf(story.ask({ kind: 'move-order', orderId, dueOn: '2026-05-19' }))).toEqual({ code: 'day-too-early', data: { day: '2026-05-19', earliest: '2026-05-20' }, field: 'dueOn' });
      expect(await refusalOf(story.ask({ kind: 'add-order', ...item(), units: 3, dueOn: '2026-05-19' }))).toMatchObject({ code: 'day-too-early', field: 'dueOn' });
      expect(await refusalOf(story.ask({ kind: 'change-batch', batchId, cautiousUnits: 5, readyOn: '2026-02-01' }))).toMatchObject({ code: 'day-too-early', field: 'readyOn' });
      expect(await refusalOf(story.ask({ kind: 'change-batch', batchId, cautiousUnits: 101 }))).toMatchObject({ code: 'cautious-over-units', field: 'cautiousUnits' });
      await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
      for (const kind of ['move-order', 'cancel-order'] as const) {
        const change = kind === 'move-order' ? { kind, orderId, dueOn: '2026-06-20' } : { kind, orderId };
        expect(await refusalOf(story.ask(change))).toEqual({ code: 'order-not-open', data: { order: code, state: 'cancelled' }, field: 'orderId' });
      }
      await story.lose(lotId, 20);
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId }))).toMatchObject({ code: 'not-enough-units', data: { available: 0 }, field: 'units' });
      await nursery.as('grower').propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn: '2026-05-20' }));
      expect(await refusalOf(story.ask({ kind: 'lose-batch', batchId }))).toMatchObject({ code: 'batch-closed', data: { batch, closedOn: '2026-05-20' } });
    });

    it('because nobody here has it answers as not found, another nursery’s as nobody’s', async () => {
      const other = await openNursery(database);
      const theirs = await whatIfStory(other);
      const lotId = await theirs.addLot({ units: 7 });
      const { batchId } = await theirs.startBatch();
      const { orderId } = await theirs.order([{ units: 5 }]);
      const own = await story.order([{ units: 1 }]);
      const added = { kind: 'add-order' as const, ...item(), units: 3, dueOn: '2026-06-01' };
      const changes: [Change, string][] = [
        [{ kind: 'move-order', orderId, dueOn: '2026-07-01' }, 'orderId'], [{ kind: 'cancel-order', orderId }, 'orderId'], [{ kind: 'cancel-order', orderId: randomUUID() }, 'orderId'],
        [{ kind: 'lose-lot', lotId }, 'lotId'], [{ kind: 'lose-batch', batchId }, 'batchId'], [{ kind: 'change-batch', batchId, cautiousUnits: 3 }, 'batchId'],
        [{ ...added, plantId: theirs.plantId }, 'plantId'], [{ ...added, containerId: theirs.containerId }, 'containerId'], [{ ...added, clientId: theirs.clientId }, 'clientId'], [{ ...added, siteId: theirs.siteId }, 'siteId'],
      ];
      for (const [change, field] of changes) expect(await refusalOf(story.ask(change))).toMatchObject({ code: 'not-found', field });
      const lotOfOurs = await story.addLot({ units: 3 });
      await story.pull(own.orderId, [{ lineId: own.lineId, lotId: lotOfOurs, units: 1 }], { confirmed: true });
      expect(await refusalOf(story.ask({ kind: 'cancel-order', orderId: own.orderId, placeId: theirs.placeId }))).toMatchObject({ code: 'not-found', field: 'placeId' });
      await other.close();
    });

    it('at the site of another client is refused', async () => {
      const clientId = randomUUID();
      await nursery.as('grower').gardens.addClient(sent({ clientId, name: 'Hill Farm' }));
      expect(await refusalOf(story.ask({ kind: 'add-order', ...item(), units: 3, dueOn: '2026-06-01', clientId, siteId: story.siteId }))).toEqual({ code: 'site-of-other-client', data: { site: 'South slope' }, field: 'siteId' });
    });
  });
});
