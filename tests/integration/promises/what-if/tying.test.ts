import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { whatIfStory } from './story.ts';

describe('tying plants to a line, tried', () => {
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

  /** Two lots of which the one that must leave first is held by the first line, the other by the second. */
  async function twoHeld() {
    const soon = await story.addLot({ units: 8, plantByOn: '2026-06-15' });
    const later = await story.addLot({ units: 8, plantByOn: '2026-09-01' });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    return {
      soon,
      later,
      first,
      second,
      heldByFirst: Object.keys(await story.heldBy(first.lineId))[0] === soon ? soon : later,
    };
  }

  it('to other plants than the plan gave it sends others to those that it leaves', async () => {
    const { soon, later, first, second, heldByFirst } = await twoHeld();
    const wanted = heldByFirst === soon ? later : soon;
    const { answer, really, told } = await story.askThenKeep({
      kind: 'pin',
      lineId: first.lineId,
      supplyId: wanted,
      units: 8,
    });
    expect(answer.lines).toMatchObject([
      {
        lineId: first.lineId,
        filledNow: 8,
        filledThen: 8,
        takes: [{ supplyId: wanted, units: 8, orders: [second.code] }],
      },
      {
        lineId: second.lineId,
        filledNow: 8,
        filledThen: 8,
        shorterBy: 0,
        givesUp: [{ supplyId: wanted, units: 8, why: 'to-others', orders: [first.code] }],
      },
    ]);
    expect(told).toEqual(really);
  });

  it('of a lot that an earlier order holds names that order as the one that loses', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    const { answer, really, told } = await story.askThenKeep({
      kind: 'pin',
      lineId: second.lineId,
      supplyId: lotId,
      units: 6,
    });
    expect(answer.lines).toMatchObject([
      { lineId: second.lineId, filledNow: 2, filledThen: 6 },
      { lineId: first.lineId, filledNow: 8, filledThen: 4, shorterBy: 4 },
    ]);
    expect(told).toEqual(really);
  });

  it('given up by hand goes elsewhere and does not come back, until it is tied again', async () => {
    const { first, heldByFirst } = await twoHeld();
    const given = await story.askThenKeep({ kind: 'release', lineId: first.lineId, supplyId: heldByFirst });
    expect(given.answer.lines[0]).toMatchObject({
      lineId: first.lineId,
      filledThen: 8,
      givesUp: [{ supplyId: heldByFirst, units: 8, why: 'released-by-hand' }],
    });
    expect(given.told).toEqual(given.really);
    const again = await story.askThenKeep({ kind: 'pin', lineId: first.lineId, supplyId: heldByFirst, units: 3 });
    expect(again.answer.lines[0]?.takes).toContainEqual(expect.objectContaining({ supplyId: heldByFirst, units: 3 }));
    expect(again.told).toEqual(again.really);
  });

  it('that is untied goes where the plan would have it', async () => {
    const lotId = await story.addLot({ units: 10 });
    const first = await story.order([{ units: 8 }]);
    const second = await story.order([{ units: 8 }]);
    await nursery.as('grower').promises.pinReservation(
      sent({
        lineId: second.lineId,
        supplyId: lotId,
        units: 6,
        acceptedShortages: [{ lineId: first.lineId, units: 4 }],
      }),
    );
    const { answer, really, told } = await story.askThenKeep({ kind: 'unpin', lineId: second.lineId, supplyId: lotId });
    expect(answer.lines).toMatchObject([
      { lineId: second.lineId, filledNow: 6, filledThen: 2 },
      { lineId: first.lineId, filledNow: 4, filledThen: 8 },
    ]);
    expect(told).toEqual(really);
  });

  it('is refused as the command refuses it, and what was never reserved can be neither untied nor given up', async () => {
    const lotId = await story.addLot({ units: 10 });
    const { lineId } = await story.order([{ units: 4 }]);
    const other = await story.addReadyLotOf('Asclepias viridis', 'ASVI');
    const { promises } = nursery.as('grower');
    for (const [supplyId, units] of [
      [lotId, 5],
      [other, 1],
    ] as const) {
      const refused = await refusalOf(promises.pinReservation(sent({ lineId, supplyId, units })));
      expect(refused).toMatchObject({ code: supplyId === lotId ? 'more-than-line-needs' : 'does-not-serve' });
      expect(await refusalOf(story.ask({ kind: 'pin', lineId, supplyId, units }))).toEqual(refused);
    }
    for (const kind of ['unpin', 'release'] as const)
      expect(await refusalOf(story.ask({ kind, lineId, supplyId: other }))).toMatchObject({
        code: 'nothing-reserved',
        field: 'supplyId',
      });
    expect(await refusalOf(story.ask({ kind: 'unpin', lineId, supplyId: lotId }))).toMatchObject({
      code: 'nothing-reserved',
    });
  });
});
