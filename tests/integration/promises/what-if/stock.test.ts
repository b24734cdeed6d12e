import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { whatIfStory } from './story.ts';

describe('a change of lots and batches that is tried', () => {
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

  describe('a lot that is lost', () => {
    it('takes from the last turn first, moves the others to what is left, and says what is gone', async () => {
      const lotId = await story.addLot({ units: 20, plantByOn: '2026-06-15' });
      const spare = await story.addLot({ units: 6, plantByOn: '2026-09-01' });
      const first = await story.order([{ units: 10 }]);
      const second = await story.order([{ units: 10 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId, units: 15 });
      expect(told).toEqual(really);
      expect(answer.lines.reduce((sum, { shorterBy }) => sum + shorterBy, 0)).toBe(9);
      expect(answer.lines.map(short)).toContainEqual({
        lineId: second.lineId,
        filledNow: 10,
        filledThen: 1,
        shorterBy: 9,
        shortThen: 9,
      });
      const moves = answer.lines.find(({ lineId }) => lineId === first.lineId);
      expect(moves).toMatchObject({
        filledNow: 10,
        filledThen: 10,
        shorterBy: 0,
        givesUp: [{ supplyId: lotId, why: 'gone' }],
        takes: [{ supplyId: spare }],
      });
      expect(answer.totals).toEqual({ shortNow: 0, shortThen: 9, decliningNow: 6, decliningThen: 0 });
    });

    it('wholly is closed and serves nobody', async () => {
      const lotId = await story.addLot({ units: 20 });
      const { lineId, code } = await story.order([{ units: 10 }]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId });
      expect(answer.lines).toMatchObject([
        {
          lineId,
          orderCode: code,
          filledThen: 0,
          shorterBy: 10,
          givesUp: [{ why: 'gone' }],
          reasons: [{ reason: 'not-grown', units: 10 }],
        },
      ]);
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
      await nursery
        .as('crew')
        .stock.moveLot(sent({ lotId, toPlaceId: story.quarantineId, units: 8, happenedOn: '2026-05-20' }));
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId, units: 3 }))).toMatchObject({
        code: 'which-place',
        field: 'placeId',
      });
      expect((await story.ask({ kind: 'lose-lot', lotId, units: 3, placeId: story.quarantineId })).lines).toEqual([]);
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-lot', lotId, placeId: story.placeId });
      expect(answer.lines).toMatchObject([
        { filledNow: 12, filledThen: 0, shorterBy: 12, reasons: [{ reason: 'held', units: 8 }] },
      ]);
      expect(told).toEqual(really);
    });
  });

  describe('a batch', () => {
    it('that is lost in part yields no more plants than cells stand', async () => {
      const { batchId, code } = await story.startBatch();
      const { lineId } = await story.order([{ units: 50 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({ kind: 'lose-batch', batchId, units: 70 });
      expect(answer.lines).toMatchObject([
        {
          lineId,
          filledNow: 50,
          filledThen: 30,
          shorterBy: 20,
          givesUp: [{ supplyKind: 'batch', code, units: 20, why: 'gone' }],
        },
      ]);
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
      const { answer, really, told } = await story.askThenKeep({
        kind: 'change-batch',
        batchId,
        cautiousUnits: 60,
        readyOn: '2026-07-10',
      });
      expect(answer.lines).toMatchObject([
        {
          lineId: soon.lineId,
          shorterBy: 20,
          givesUp: [{ code, units: 20, why: 'not-ready' }],
          reasons: [{ reason: 'not-ready', codes: [code], day: '2026-07-10' }],
        },
      ]);
      expect(answer.unchangedLines).toBe(1);
      expect([told, really]).toEqual([really, { [patient.lineId]: { [batchId]: 20 } }]);
    });

    it('that yields fewer plants takes from the last turn', async () => {
      const { batchId } = await story.startBatch();
      const first = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const second = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({
        kind: 'change-batch',
        batchId,
        cautiousUnits: 35,
        readyOn: '2026-06-15',
      });
      expect(answer.lines.map(short)).toEqual([
        { lineId: second.lineId, filledNow: 30, filledThen: 5, shorterBy: 25, shortThen: 25 },
      ]);
      expect([told, really]).toEqual([
        really,
        { [first.lineId]: { [batchId]: 30 }, [second.lineId]: { [batchId]: 5 } },
      ]);
    });

    it('that yields more fills who was short', async () => {
      const { batchId } = await story.startBatch({ cautiousUnits: 10 });
      const { lineId } = await story.order([{ units: 30 }], { dueOn: '2026-06-20' });
      const { answer, really, told } = await story.askThenKeep({
        kind: 'change-batch',
        batchId,
        cautiousUnits: 25,
        readyOn: '2026-06-15',
      });
      expect(answer.lines).toMatchObject([
        { lineId, filledNow: 10, filledThen: 25, shortThen: 5, takes: [{ units: 15, orders: [] }] },
      ]);
      expect(told).toEqual(really);
    });
  });
});
