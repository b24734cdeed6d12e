// Many lines that take many of the same plants: planned in time, and where that cannot be, said so instead of being asked for again for ever.
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import { NotSolvedInTime, solver } from '../../../apps/server/src/features/promises/solving/solver.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { readFreshPlan } from '../../support/fresh-plan.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';

const PLANTS = 40;
const LOTS_A_PLANT = 3;
const LINES = 400;

describe('four hundred lines with twenty alternatives each', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  let plants: string[];
  let orderId: string;
  const lots: string[] = [];
  beforeAll(async () => {
    database = await createDatabase();
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    plants = [];
    for (let at = 0; at < PLANTS; at++) {
      const letters = String.fromCharCode(65 + (at % 26), 65 + Math.floor(at / 26));
      plants.push(await story.addPlant({ name: `Proba ${letters.toLowerCase()}folia`, code: `PR${letters}` }));
      for (let lot = 0; lot < LOTS_A_PLANT; lot++)
        lots.push(await story.addLot({ plantId: plants[at] ?? '', units: 60 + lot }));
    }
    ({ orderId } = await story.order([]));
    const lines = Array.from({ length: LINES }, (_, at) => ({
      id: randomUUID(),
      rank: 1000 + at,
      plant: plants[at % PLANTS],
      units: 1 + (at % 9),
    }));
    await nursery.sql(
      `INSERT INTO order_line (nursery_id, id, order_id, rank, plant_id, container_id, units)
      SELECT $1, n.id, $2, n.rank, n.plant, $3, n.units FROM jsonb_to_recordset($4) AS n (id uuid, rank int, plant uuid, units int)`,
      [nursery.nurseryId, orderId, story.containerId, JSON.stringify(lines)],
    );
    const others = lines.flatMap(({ id }, at) =>
      Array.from({ length: 20 }, (_, nth) => ({ id, plant: plants[(at + 1 + nth) % PLANTS], penalty: 1 + nth })),
    );
    await nursery.sql(
      `INSERT INTO line_alternative (nursery_id, line_id, plant_id, container_id, penalty)
      SELECT $1, n.id, n.plant, $2, n.penalty FROM jsonb_to_recordset($3) AS n (id uuid, plant uuid, penalty int)`,
      [nursery.nurseryId, story.containerId, JSON.stringify(others)],
    );
  });
  afterEach(() => void vi.restoreAllMocks());
  afterAll(async () => {
    await nursery.close();
    await solver.stop();
    await database.drop();
  });

  const addLine = () =>
    nursery.as('grower').orders.addLine(
      sent({
        orderId,
        lineId: randomUUID(),
        plantId: plants[0] ?? '',
        containerId: story.containerId,
        units: 3,
        alternatives: plants.slice(1, 21).map((plantId) => ({ plantId, containerId: story.containerId })),
      }),
    );
  const takesTooLong = () => vi.spyOn(solver, 'apart').mockRejectedValue(new NotSolvedInTime('as asked'));
  const reserved = async () =>
    (
      await nursery.sql<{ units: number }>(
        'SELECT coalesce(sum(units), 0)::int AS units FROM reservation WHERE nursery_id = $1',
        [nursery.nurseryId],
      )
    )[0]?.units ?? 0;
  const lose = (lotId: string) =>
    nursery
      .as('crew')
      .stock.loseFromLot(sent({ lotId, units: 60, cause: 'weather' as const, happenedOn: '2026-05-20' }));

  it('take one line more at once, and promise it plants when that is solved', async () => {
    await addLine();
    await nursery.runner.plans.settled();
    expect(await reserved()).toBeGreaterThan(LINES);
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored).toEqual(fresh);
  });

  it('take one line more that cannot be solved in time, promise it nothing, and say that the plan is stale', async () => {
    takesTooLong();
    const before = await reserved();
    await addLine();
    await nursery.runner.plans.settled();
    expect(await reserved()).toBe(before);
    expect((await nursery.as('viewer').promises.planState({})).staleSince).not.toBeNull();
  });

  it('refuse another day that cannot be solved in time, with what can be done, and keep everything as it was', async () => {
    takesTooLong();
    const changed = nursery.as('grower').promises.changeDay(sent({ orderId, dueOn: '2026-05-30' }));
    expect(await refusalOf(changed)).toMatchObject({
      code: 'too-many-lines-share',
      data: { lines: LINES + 2, plants: PLANTS },
    });
    expect(await nursery.sql(`SELECT 1 FROM garden_order WHERE due_on = '2026-05-30'`)).toEqual([]);
  });

  it('let what happened to plants be booked all the same: the last rank gives up, nothing new is given, and the next plan fills it again', async () => {
    takesTooLong();
    const before = await reserved();
    const [lotId = ''] = (
      await nursery.sql<{ id: string }>(
        'SELECT lot_id::text AS id FROM reservation WHERE nursery_id = $1 GROUP BY lot_id ORDER BY sum(units) DESC LIMIT 1',
        [nursery.nurseryId],
      )
    ).map(({ id }) => id);
    await lose(lotId);
    await nursery.runner.plans.settled();
    expect(await story.unitsOf(lotId)).toBeLessThan(3);
    expect(await reserved()).toBeLessThan(before);
    expect((await checkLaws(database.ownerUrl)).breaches).toEqual([]);
    vi.restoreAllMocks();
    nursery.clock.set('2026-05-21');
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody' }));
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored).toEqual(fresh);
  });

  it('let an order be cancelled that cannot be planned in time, since that is the way out', async () => {
    takesTooLong();
    await nursery.as('grower').gardens.cancelOrder(sent({ orderId, happenedOn: '2026-05-20' }));
    expect(await reserved()).toBe(0);
  });
});
