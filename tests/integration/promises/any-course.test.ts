import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { readFreshPlan } from '../../support/fresh-plan.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { tries } from '../../support/tries.ts';

const today = '2026-05-20';

type Step =
  | { kind: 'order'; units: number; day: number; alternative: boolean }
  | { kind: 'lose' | 'return' | 'plant' | 'pull'; at: number; units: number }
  | { kind: 'hold' | 'release' | 'issue' | 'cancel' | 'unpin'; at: number }
  | { kind: 'move'; at: number; days: number }
  | { kind: 'resize' | 'pin'; at: number; units: number }
  | { kind: 'split' | 'pot-up' | 'pot' | 'merge'; at: number; units: number; other: number }
  | { kind: 'undo'; back: number };

const at = fc.nat({ max: 11 });
const units = fc.integer({ min: 1, max: 25 });
const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({
        kind: fc.constant('order' as const),
        units,
        day: fc.nat({ max: 60 }),
        alternative: fc.boolean(),
      }),
    },
    {
      weight: 6,
      arbitrary: fc.record({
        kind: fc.constantFrom('lose' as const, 'return' as const, 'plant' as const, 'pull' as const),
        at,
        units,
      }),
    },
    {
      weight: 4,
      arbitrary: fc.record({
        kind: fc.constantFrom(
          'hold' as const,
          'release' as const,
          'issue' as const,
          'cancel' as const,
          'unpin' as const,
        ),
        at,
      }),
    },
    {
      weight: 2,
      arbitrary: fc.record({ kind: fc.constant('move' as const), at, days: fc.integer({ min: -20, max: 40 }) }),
    },
    {
      weight: 6,
      arbitrary: fc.record({ kind: fc.constantFrom('resize' as const, 'pin' as const, 'pin' as const), at, units }),
    },
    {
      weight: 6,
      arbitrary: fc.record({
        kind: fc.constantFrom('split' as const, 'pot-up' as const, 'pot' as const, 'merge' as const),
        at,
        units,
        other: at,
      }),
    },
    { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), back: fc.nat({ max: 2 }) }) },
  ),
  { minLength: 4, maxLength: 16 },
);

/** Refusals are part of any course; every other error fails the test. */
async function tried<Done>(work: Promise<Done>): Promise<Done | undefined> {
  try {
    return await work;
  } catch (error) {
    const code = (error as { cause?: { code?: string } }).cause?.code;
    if (!code || code === 'fault') throw error;
    return undefined;
  }
}

describe('whatever happens to plants and orders', () => {
  let database: TestDatabase;
  beforeAll(async () => {
    database = await createDatabase();
  });
  afterAll(() => database.drop());

  interface Course {
    lots: string[];
    batchId: string;
    orders: { orderId: string; lineId: string }[];
    /** Entries that gave plants another label, which can be taken back. */
    done: string[];
  }

  /** Plants that get another label, in the pot they had or in the other one. */
  async function relabel(
    nursery: TestNursery,
    story: GardenStory,
    { lots, batchId, done }: Course,
    step: Extract<Step, { other: number }>,
  ): Promise<void> {
    const { propagation, stock } = nursery.as('owner');
    const { placeId, containerId } = story;
    const lotId = lots[step.at % lots.length] ?? '';
    const other = lots[step.other % lots.length] ?? '';
    const newId = randomUUID();
    const isIntoExisting = step.kind === 'pot' && step.other % 2 === 1;
    const made = await tried<{ entryId: string }>(
      step.kind === 'split'
        ? stock.splitLot(sent({ lotId, happenedOn: today, into: [{ lotId: newId, placeId, units: step.units }] }))
        : step.kind === 'pot-up'
          ? stock.potUpLot(
              sent({
                lotId,
                happenedOn: today,
                into: [{ lotId: newId, containerId: otherContainer, placeId, units: step.units, readyOn: today }],
              }),
            )
          : step.kind === 'merge'
            ? stock.mergeLots(sent({ lotIds: [lotId, other], happenedOn: today, into: { lotId: newId, placeId } }))
            : propagation.potBatch(
                sent({
                  batchId,
                  happenedOn: today,
                  lots: [
                    {
                      lotId: isIntoExisting ? lotId : newId,
                      into: isIntoExisting ? ('existing' as const) : ('new' as const),
                      containerId,
                      placeId,
                      unitsOut: step.units,
                      pottedUnits: step.units,
                      readyOn: today,
                    },
                  ],
                }),
              ),
    );
    if (!made) return;
    done.push(made.entryId);
    if (!isIntoExisting) lots.unshift(newId);
  }

  async function follow(nursery: TestNursery, story: GardenStory, course: Course, step: Step): Promise<void> {
    const { gardens, promises, stock } = nursery.as('owner');
    const { lots, orders, done, batchId } = course;
    if (step.kind === 'order') {
      const alternatives = step.alternative ? [{ plantId: story.plantId, containerId: otherContainer }] : [];
      orders.push(
        await story.order([{ units: step.units, alternatives }], {
          dueOn: new Date(Date.UTC(2026, 4, 20 + step.day)).toISOString().slice(0, 10),
        }),
      );
      return;
    }
    if (step.kind === 'undo') {
      const entryId = done.at(-1 - step.back);
      if (entryId) await tried(stock.reverseEntry(sent({ entryId })));
      return;
    }
    if ('other' in step) return relabel(nursery, story, course, step);
    const lotId = lots[step.at % lots.length] ?? '';
    const supplyId = step.at % 4 === 3 ? batchId : lotId;
    const order = orders[step.at % Math.max(1, orders.length)];
    if (step.kind === 'lose') await tried(story.lose(lotId, step.units));
    if (step.kind === 'hold')
      await tried(stock.holdMany(sent({ lotIds: [lotId], reason: 'inspector' as const, happenedOn: today })));
    if (step.kind === 'release')
      await tried(
        stock.releaseLot(sent({ lotId, reason: 'inspector' as const, releaseReason: 'Seen.', happenedOn: today })),
      );
    if (!order) return;
    const { orderId, lineId } = order;
    if (step.kind === 'pull') await tried(story.pull(orderId, [{ lineId, lotId, units: step.units }]));
    if (step.kind === 'plant')
      await tried(
        gardens.plantOrder(sent({ orderId, happenedOn: today, rows: [{ lineId, lotId, units: step.units }] })),
      );
    if (step.kind === 'return')
      await tried(
        gardens.returnFromOrder(
          sent({
            orderId,
            happenedOn: today,
            placeId: story.placeId,
            rows: [{ lineId, lotId, returnedUnits: step.units }],
          }),
        ),
      );
    if (step.kind === 'issue') await tried(gardens.issuePullList(sent({ orderId })));
    if (step.kind === 'cancel')
      await tried(gardens.cancelOrder(sent({ orderId, happenedOn: today, placeId: story.placeId })));
    if (step.kind === 'unpin') await tried(promises.unpinReservation(sent({ lineId, supplyId })));
    if (step.kind === 'pin') await tried(promises.pinReservation(sent({ lineId, supplyId, units: step.units })));
    if (step.kind === 'resize') await tried(promises.editLine(sent({ lineId, units: step.units })));
    if (step.kind === 'move')
      await tried(
        promises.changeDay(
          sent({ orderId, dueOn: new Date(Date.UTC(2026, 5, 1 + step.days)).toISOString().slice(0, 10) }),
        ),
      );
  }
  let otherContainer = randomUUID();

  const faults = (nursery: TestNursery) =>
    nursery.sql<{ fault: string }>(
      `
    WITH on_hand AS (
      SELECT l.id, l.plant_id, l.container_id, l.plant_by_on, coalesce((SELECT sum(units) FROM account a WHERE a.nursery_id = l.nursery_id AND a.lot_id = l.id AND a.kind = 'place'), 0) AS units,
             coalesce((SELECT sum(units) FROM reservation r WHERE r.nursery_id = l.nursery_id AND r.lot_id = l.id), 0) AS reserved,
             EXISTS (SELECT 1 FROM hold h WHERE h.nursery_id = l.nursery_id AND h.lot_id = l.id AND h.released_on IS NULL) AS held
        FROM lot l WHERE l.nursery_id = $1),
    line AS (
      SELECT l.*, o.state, greatest(o.due_on, '${today}') AS day, g.* FROM order_line l JOIN garden_order o USING (nursery_id) JOIN line_progress g ON g.nursery_id = l.nursery_id AND g.line_id = l.id
       WHERE l.order_id = o.id AND l.nursery_id = $1)
    SELECT 'a lot promises more than it holds' AS fault FROM on_hand WHERE reserved > units
    UNION ALL SELECT 'a held lot promises plants' FROM on_hand WHERE held AND reserved > 0
    UNION ALL SELECT 'a line that is over holds plants' FROM line WHERE state <> 'open' AND reserved_units > 0
    UNION ALL SELECT 'a line holds more than it asked for' FROM line WHERE reserved_units > greatest(0, units - staged_units - delivered_units)
    UNION ALL SELECT 'a loss is open although its line is whole' FROM line n JOIN line_loss x ON x.nursery_id = $1 AND x.line_id = n.line_id AND x.settled_on IS NULL
      WHERE n.state = 'open' AND n.units <= n.reserved_units + n.staged_units + n.delivered_units
    UNION ALL SELECT 'a line is short while plants that serve it are free' FROM line n
      WHERE n.state = 'open' AND n.units > n.reserved_units + n.staged_units + n.delivered_units
        AND EXISTS (SELECT 1 FROM on_hand h WHERE NOT h.held AND h.units > h.reserved AND h.plant_id = n.plant_id AND coalesce(h.plant_by_on >= n.day, true)
                      AND (h.container_id = n.container_id OR EXISTS (SELECT 1 FROM line_alternative x WHERE x.nursery_id = $1 AND x.line_id = n.line_id AND x.container_id = h.container_id)))`,
      [nursery.nurseryId],
    );

  it('no plant is promised twice, no line is short beside free plants, and what is stored is what a fresh plan would be', async () => {
    await fc.assert(
      fc.asyncProperty(steps, async (course) => {
        const nursery = await openNursery(database);
        try {
          const story = await gardenStory(nursery);
          otherContainer = await story.addContainer({ code: 'tall-2l' });
          const lots = [
            await story.addLot({ units: 30, plantByOn: '2026-06-15' }),
            await story.addLot({ units: 20 }),
            await story.addLot({ units: 15, containerId: otherContainer }),
          ];
          const batchId = randomUUID();
          await nursery.as('owner').propagation.startBatch(
            sent({
              batchId,
              plantId: story.plantId,
              sourceId: story.sourceId,
              method: 'cutting' as const,
              unit: 'piece' as const,
              containerId: null,
              units: 40,
              placeId: story.placeId,
              happenedOn: '2026-04-01',
              targetContainerId: story.containerId,
              cautiousUnits: 25,
              readyOn: '2026-06-10',
            }),
          );
          const drawn: Course = { lots, batchId, orders: [], done: [] };
          for (const step of course) {
            await follow(nursery, story, drawn, step);
            expect({ step, faults: await faults(nursery) }).toEqual({ step, faults: [] });
            const { stored, fresh } = await readFreshPlan(nursery);
            expect({ step, stored }).toEqual({ step, stored: fresh });
          }
        } finally {
          await nursery.close();
        }
      }),
      tries(10, 20_261_124),
    );
  }, 240_000);
});
