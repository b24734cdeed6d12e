import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { solver } from '../../../apps/server/src/features/promises/solving/solver.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { readFreshPlan } from '../../support/fresh-plan.ts';
import { type GardenStory, gardenStory } from '../../support/gardens.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';

const LOTS = 150;
const LINES = 150;

describe('the promises of a large nursery', () => {
  let database: TestDatabase;
  let nursery: TestNursery;
  let story: GardenStory;
  let lotIds: string[];
  const apart = vi.spyOn(solver, 'apart');
  const inThread = apart.getMockImplementation() ?? solver.apart;
  const foresee = vi.spyOn(solver, 'foresee');
  beforeAll(async () => {
    database = await createDatabase();
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    lotIds = [];
    for (let lot = 0; lot < LOTS; lot++) lotIds.push(await story.addLot({ units: 1 + (lot % 17) }));
    await story.order(Array.from({ length: LINES }, (_, line) => ({ units: 1 + (line % 13) })));
  });
  afterAll(async () => {
    await nursery.close();
    await solver.stop();
    await database.drop();
  });
  const expectPlanned = async () => {
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored.length).toBeGreaterThan(LINES);
    expect(stored).toEqual(fresh);
  };

  const staleSince = async () =>
    (await nursery.sql<{ since: Date | null }>('SELECT plan_stale_since AS since FROM nursery'))[0]?.since ?? null;
  const count = (lotId: string, countedUnits: number) =>
    nursery.as('crew').stock.countLot(
      sent({
        lotId,
        placeId: story.placeId,
        countedUnits,
        countKind: 'counted' as const,
        happenedOn: '2026-05-20',
      }),
    );

  it('are solved in a thread of their own after what asked for them, with the same outcome', async () => {
    await nursery.runner.plans.settled();
    expect(apart).toHaveBeenCalledWith('plan', expect.anything());
    expect(await staleSince()).toBeNull();
    await expectPlanned();
  });

  it('are solved before a new day’s roll takes the lock, and taken from there where nothing moved', async () => {
    nursery.clock.set('2026-05-21');
    foresee.mockClear();
    apart.mockClear();
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody' }));
    expect(foresee).toHaveBeenCalledTimes(1);
    expect(apart).toHaveBeenCalledTimes(1);
    expect(await staleSince()).toBeNull();
    await expectPlanned();
  });

  it('are solved again where something moved in between', async () => {
    nursery.clock.set('2026-05-22');
    foresee.mockImplementationOnce(async () => {
      await nursery.sql('UPDATE lot SET ready_on = $3 WHERE nursery_id = $1 AND id = ANY ($2)', [
        nursery.nurseryId,
        lotIds.slice(0, 20),
        '2026-07-01',
      ]);
    });
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody else' }));
    await nursery.runner.plans.settled();
    expect(await staleSince()).toBeNull();
    await expectPlanned();
  });

  it('hold nobody up while they are solved: others read and book, and the plan takes that in, too', async () => {
    const during: (string | null)[] = [];
    apart.mockImplementationOnce(async (name, asked) => {
      during.push((await nursery.as('viewer').promises.planState({})).staleSince);
      await count(lotIds[41] ?? '', 3);
      return inThread(name, asked);
    });
    await count(lotIds[40] ?? '', 40);
    await nursery.runner.plans.settled();
    expect(during).toEqual([expect.stringMatching(/^2026-05-22T/)]);
    expect((await nursery.as('viewer').promises.planState({})).staleSince).toBeNull();
    await expectPlanned();
  });

  it('are solved before an edit takes the lock, and again where something moved in between', async () => {
    const [line] = await nursery.sql<{ lineId: string; orderId: string }>(
      'SELECT id::text AS "lineId", order_id::text AS "orderId" FROM order_line ORDER BY rank LIMIT 1',
    );
    apart.mockClear();
    apart.mockImplementationOnce(async (name, asked) => {
      await count(lotIds[42] ?? '', 2);
      return inThread(name, asked);
    });
    const done = await nursery
      .as('grower')
      .promises.changeDay(sent({ orderId: line?.orderId ?? '', dueOn: '2026-05-30', keepRank: true }));
    expect(done).toMatchObject({ dueOn: '2026-05-30', keepsRank: true });
    expect(apart.mock.calls.length).toBeGreaterThanOrEqual(2);
    await nursery.runner.plans.settled();
    await expectPlanned();
  });

  it('are looked at apart for what if and for a promise check, with the answer of always', async () => {
    const { plantId, containerId } = story;
    const ask = () =>
      nursery.as('viewer').promises.checkPromise({
        plantId,
        containerId,
        on: '2026-06-01',
        units: 40,
        siteId: null,
        clientId: null,
        seedZone: null,
        wildType: false,
        untreated: false,
        nativesOnly: false,
        alternatives: [],
      });
    const tryLoss = () =>
      nursery
        .as('viewer')
        .promises.whatIf({ kind: 'lose-lot', lotId: lotIds[60] ?? '', placeId: story.placeId, units: 2 });
    apart.mockClear();
    const answers = [await ask(), await tryLoss()];
    expect(apart.mock.calls.map(([name]) => name)).toEqual(['check', 'whatIf']);
    vi.spyOn(solver, 'isLarge').mockReturnValue(false);
    expect([await ask(), await tryLoss()]).toEqual(answers);
    vi.mocked(solver.isLarge).mockRestore();
  });
});
