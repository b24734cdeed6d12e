import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../../support/nursery.ts';
import { type Change, whatIfStory } from './story.ts';

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
  const codeOf = async (lotId: string) =>
    (await nursery.sql<{ code: string }>('SELECT code FROM lot WHERE id = $1', [lotId]))[0]?.code ?? '';
  const item = () => ({ plantId: story.plantId, containerId: story.containerId });

  it('writes nothing, whatever it is', async () => {
    const lotId = await story.addLot({ units: 20 });
    const { batchId } = await story.startBatch();
    const { orderId, lineId } = await story.order([{ units: 8 }]);
    await nursery.as('grower').promises.pinReservation(sent({ lineId, supplyId: lotId, units: 3 }));
    const state = async () => [
      await story.held(),
      await nursery.sql('SELECT version FROM nursery WHERE id = $1', [nursery.nurseryId]),
      await story.read(orderId),
    ];
    const before = await state();
    const changes: Change[] = [
      { kind: 'move-order', orderId, dueOn: '2026-07-01' },
      { kind: 'cancel-order', orderId },
      { kind: 'add-order', ...item(), units: 200, dueOn: '2026-06-10' },
      { kind: 'lose-lot', lotId },
      { kind: 'lose-batch', batchId },
      { kind: 'change-batch', batchId, cautiousUnits: 1, readyOn: null },
      { kind: 'edit-line', lineId, units: 90, keepRank: true },
      { kind: 'withdraw-line', lineId },
      { kind: 'add-line', orderId, lineId: randomUUID(), ...item(), units: 4 },
      { kind: 'pin', lineId, supplyId: lotId, units: 8 },
      { kind: 'unpin', lineId, supplyId: lotId },
      { kind: 'release', lineId, supplyId: lotId },
      { kind: 'natives-only', orderId, nativesOnly: false },
    ];
    for (const change of changes) await story.ask(change);
    expect(await state()).toEqual(before);
  });

  describe('that makes no sense', () => {
    it('is refused beside the field: more than stands, a day that is over, an order that is done', async () => {
      const lotId = await story.addLot({ units: 20 });
      const { batchId, code: batch } = await story.startBatch();
      const { orderId, code } = await story.order([{ units: 8 }]);
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId, units: 21 }))).toEqual({
        code: 'not-enough-units',
        data: { wanted: 21, available: 20, of: await codeOf(lotId) },
        field: 'units',
      });
      expect(await refusalOf(story.ask({ kind: 'lose-batch', batchId, units: 101 }))).toEqual({
        code: 'not-enough-units',
        data: { wanted: 101, available: 100, of: batch },
        field: 'units',
      });
      expect(await refusalOf(story.ask({ kind: 'move-order', orderId, dueOn: '2026-05-19' }))).toEqual({
        code: 'day-too-early',
        data: { day: '2026-05-19', earliest: '2026-05-20' },
        field: 'dueOn',
      });
      expect(await refusalOf(story.ask({ kind: 'add-order', ...item(), units: 3, dueOn: '2026-05-19' }))).toMatchObject(
        { code: 'day-too-early', field: 'dueOn' },
      );
      expect(
        await refusalOf(story.ask({ kind: 'change-batch', batchId, cautiousUnits: 5, readyOn: '2026-02-01' })),
      ).toMatchObject({ code: 'day-too-early', field: 'readyOn' });
      expect(await refusalOf(story.ask({ kind: 'change-batch', batchId, cautiousUnits: 101 }))).toMatchObject({
        code: 'cautious-over-units',
        field: 'cautiousUnits',
      });
      await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
      for (const kind of ['move-order', 'cancel-order'] as const) {
        const change = kind === 'move-order' ? { kind, orderId, dueOn: '2026-06-20' } : { kind, orderId };
        expect(await refusalOf(story.ask(change))).toEqual({
          code: 'order-not-open',
          data: { order: code, state: 'cancelled' },
          field: 'orderId',
        });
      }
      await story.lose(lotId, 20);
      expect(await refusalOf(story.ask({ kind: 'lose-lot', lotId }))).toMatchObject({
        code: 'not-enough-units',
        data: { available: 0 },
        field: 'units',
      });
      await nursery
        .as('grower')
        .propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn: '2026-05-20' }));
      expect(await refusalOf(story.ask({ kind: 'lose-batch', batchId }))).toMatchObject({
        code: 'batch-closed',
        data: { batch, closedOn: '2026-05-20' },
      });
    });

    it('of a line is refused as the command refuses it: fewer than were pulled, pulled plants, a line that is gone, an order without a region', async () => {
      const lotId = await story.addLot({ units: 20 });
      const {
        orderId,
        code,
        lineIds: [pulled = '', other = ''],
      } = await story.order([{ units: 8 }, { units: 2 }]);
      await story.pull(orderId, [{ lineId: pulled, lotId, units: 5 }], { confirmed: true });
      const { orders, promises } = nursery.as('grower');
      const fewer = { code: 'below-what-happened', data: { least: 5, staged: 5, delivered: 0 }, field: 'units' };
      expect(await refusalOf(promises.editLine(sent({ lineId: pulled, units: 4 })))).toEqual(fewer);
      expect(await refusalOf(story.ask({ kind: 'edit-line', lineId: pulled, units: 4 }))).toEqual(fewer);
      const staged = { code: 'plants-are-staged', data: { order: code, units: 5 }, field: 'lineId' };
      expect(await refusalOf(orders.withdrawLine(sent({ lineId: pulled })))).toEqual(staged);
      expect(await refusalOf(story.ask({ kind: 'withdraw-line', lineId: pulled }))).toEqual(staged);
      expect(await refusalOf(story.ask({ kind: 'natives-only', orderId }))).toEqual({
        code: 'natives-need-region',
        data: { site: 'South slope' },
        field: 'nativesOnly',
      });
      expect(await refusalOf(story.ask({ kind: 'add-line', orderId, lineId: other, ...item(), units: 4 }))).toEqual({
        code: 'id-taken',
        data: { what: 'line' },
        field: 'lineId',
      });
      await orders.withdrawLine(sent({ lineId: other }));
      for (const change of [
        { kind: 'edit-line' as const, lineId: other, units: 4 },
        { kind: 'withdraw-line' as const, lineId: other },
      ])
        expect(await refusalOf(story.ask(change))).toMatchObject({ code: 'line-withdrawn', field: 'lineId' });
    });

    it('because nobody here has it answers as not found, another nursery’s as nobody’s', async () => {
      const other = await openNursery(database);
      const theirs = await whatIfStory(other);
      const lotId = await theirs.addLot({ units: 7 });
      const { batchId } = await theirs.startBatch();
      const { orderId, lineId } = await theirs.order([{ units: 5 }]);
      const own = await story.order([{ units: 1 }]);
      const added = { kind: 'add-order' as const, ...item(), units: 3, dueOn: '2026-06-01' };
      const changes: [Change, string][] = [
        [{ kind: 'move-order', orderId, dueOn: '2026-07-01' }, 'orderId'],
        [{ kind: 'cancel-order', orderId }, 'orderId'],
        [{ kind: 'cancel-order', orderId: randomUUID() }, 'orderId'],
        [{ kind: 'edit-line', lineId, units: 3 }, 'lineId'],
        [{ kind: 'withdraw-line', lineId }, 'lineId'],
        [{ kind: 'natives-only', orderId }, 'orderId'],
        [{ kind: 'add-line', orderId, lineId: randomUUID(), ...item(), units: 3 }, 'orderId'],
        [
          {
            kind: 'add-line',
            orderId: own.orderId,
            lineId: randomUUID(),
            ...item(),
            plantId: theirs.plantId,
            units: 3,
          },
          'plantId',
        ],
        [
          {
            kind: 'edit-line',
            lineId: own.lineId,
            units: 3,
            alternatives: [{ plantId: theirs.plantId, containerId: theirs.containerId }],
          },
          'plantId',
        ],
        [{ kind: 'pin', lineId, supplyId: lotId, units: 3 }, 'lineId'],
        [{ kind: 'pin', lineId: own.lineId, supplyId: lotId, units: 1 }, 'supplyId'],
        [{ kind: 'unpin', lineId: own.lineId, supplyId: lotId }, 'supplyId'],
        [{ kind: 'release', lineId: own.lineId, supplyId: lotId }, 'supplyId'],
        [{ kind: 'lose-lot', lotId }, 'lotId'],
        [{ kind: 'lose-batch', batchId }, 'batchId'],
        [{ kind: 'change-batch', batchId, cautiousUnits: 3 }, 'batchId'],
        [{ ...added, plantId: theirs.plantId }, 'plantId'],
        [{ ...added, containerId: theirs.containerId }, 'containerId'],
        [{ ...added, clientId: theirs.clientId }, 'clientId'],
        [{ ...added, siteId: theirs.siteId }, 'siteId'],
      ];
      for (const [change, field] of changes)
        expect(await refusalOf(story.ask(change))).toMatchObject({ code: 'not-found', field });
      const lotOfOurs = await story.addLot({ units: 3 });
      await story.pull(own.orderId, [{ lineId: own.lineId, lotId: lotOfOurs, units: 1 }], { confirmed: true });
      expect(
        await refusalOf(story.ask({ kind: 'cancel-order', orderId: own.orderId, placeId: theirs.placeId })),
      ).toMatchObject({ code: 'not-found', field: 'placeId' });
      await other.close();
    });

    it('at the site of another client is refused', async () => {
      const clientId = randomUUID();
      await nursery.as('grower').clients.addClient(sent({ clientId, name: 'Hill Farm' }));
      expect(
        await refusalOf(
          story.ask({ kind: 'add-order', ...item(), units: 3, dueOn: '2026-06-01', clientId, siteId: story.siteId }),
        ),
      ).toEqual({ code: 'site-of-other-client', data: { site: 'South slope' }, field: 'siteId' });
    });
  });
});
