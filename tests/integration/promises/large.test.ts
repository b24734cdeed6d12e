import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { allocator } from '../../../apps/server/src/features/promises/planning/apart/allocator.ts';
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
  const inThread = allocator.solve.bind(allocator);
  const solve = vi.spyOn(allocator, 'solve');
  const foresee = vi.spyOn(allocator, 'foresee');
  beforeAll(async () => {
    database = await createDatabase();
    nursery = await openNursery(database);
    story = await gardenStory(nursery);
    lotIds = [];
    for (let lot = 0; lot < LOTS; lot++) lotIds.push(await story.addLot({ units: 1 + (lot % 17) }));
    await story.order(Array.from({ length: LINES }, (_, line) => ({ units: 1 + (line % 13) })));
  });
  afterAll(async () => {
    await allocator.stop();
    await nursery.close();
    await database.drop();
  });
  const expectPlanned = async () => {
    const { stored, fresh } = await readFreshPlan(nursery);
    expect(stored.length).toBeGreaterThan(LINES);
    expect(stored).toEqual(fresh);
  };

  it('are planned in a thread of their own, with the same outcome', async () => {
    expect(solve).toHaveBeenCalled();
    await expectPlanned();
  });

  it('are solved before a new day’s roll takes the lock, and taken from there where nothing moved', async () => {
    nursery.clock.set('2026-05-21');
    foresee.mockClear();
    solve.mockClear();
    await nursery.as('grower').clients.addClient(sent({ clientId: randomUUID(), name: 'Somebody' }));
    expect(foresee).toHaveBeenCalledTimes(1);
    expect(solve).toHaveBeenCalledTimes(1);
    const [instance] = foresee.mock.calls[0] ?? [];
    expect(solve.mock.calls[0]?.[0]).toEqual(instance);
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
    await expectPlanned();
  });

  it('let reads be answered while they are planned', async () => {
    const places: number[] = [];
    solve.mockImplementationOnce(async (instance, withinMs) => {
      places.push((await nursery.as('viewer').stock.listPlaces({})).length);
      return inThread(instance, withinMs);
    });
    await nursery.as('crew').stock.countLot(
      sent({
        lotId: lotIds[40] ?? '',
        placeId: story.placeId,
        countedUnits: 40,
        countKind: 'counted' as const,
        happenedOn: '2026-05-20',
      }),
    );
    expect(places).toEqual([2]);
    await expectPlanned();
  });
});
