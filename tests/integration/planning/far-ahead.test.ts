// What cannot be, stored before it was refused: one such row must not end the plan for everybody.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { addProtocol } from '../../support/protocols.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Pick<TestNursery, 'nurseryId' | 'sql' | 'as'>;
let plantId: string;
let potId: string;
let sourceId: string;
beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-11-20' });
});
afterAll(async () => {
  await server.close();
  await database.drop();
});
beforeEach(async () => {
  nursery = await server.addNursery();
  const stock = stockOf(nursery);
  plantId = await stock.addPlant();
  const trayId = await stock.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 60, cells: 50 });
  potId = await stock.addContainer({ code: 'tall-1l', volumeMl: 850 });
  sourceId = await stock.addSource(plantId, { kind: 'seed-collection' });
  await addProtocol(nursery, {
    plantId,
    startContainerId: trayId,
    targetContainerId: potId,
    seedsPerCell: 2,
    stages: [
      { kind: 'sowing', days: 0 },
      { kind: 'emergence', days: [10, 20, 30], share: 0.5 },
      { kind: 'growing-on', days: [50, 60, 80], share: 0.9 },
    ],
  });
  await nursery
    .as('grower')
    .planning.addExpectedDemand(
      sent({ demandId: randomUUID(), plantId, containerId: potId, wanted: '2027-06-01', units: 40 }),
    );
  const lotId = await stock.addLot({
    plantId,
    containerId: potId,
    sourceId,
    placeId: await stock.addPlace(),
    units: 5,
    pottedOn: '2026-04-14',
  });
  await nursery.sql(
    `INSERT INTO seed_movement (nursery_id, id, source_id, kind, grams, happened_on, recorded_at, command_id) VALUES ($1, $2, $3, 'gathered', 10, '2026-09-01', '2026-09-01', $2)`,
    [nursery.nurseryId, lotId, sourceId],
  );
});

const plan = () => nursery.as('viewer').planning.readPlan({});
const wish = async (wantedOn: string) => {
  const id = randomUUID();
  await nursery.sql(
    'INSERT INTO expected_demand (nursery_id, id, plant_id, container_id, wanted_on, units) VALUES ($1, $2, $3, $4, $5, 7)',
    [nursery.nurseryId, id, plantId, potId, wantedOn],
  );
  return id;
};

describe('a plan', () => {
  it.each(['9998-05-01', '9999-12-31', '2190-06-01'])(
    'leaves out what is wanted on %s, says so, and plans the rest as if it were not there',
    async (day) => {
      const without = await plan();
      const demandId = await wish(day);
      const { lines, gaps, missingUnits } = await plan();
      expect(lines).toEqual(without.lines);
      expect(gaps).toMatchObject([{ forWhom: { demandId }, reason: 'too-far-ahead', units: 7 }]);
      expect(missingUnits).toBe(without.missingUnits + 7);
    },
  );

  it('leaves out an order for 9998, and can be read beside it with all else', async () => {
    const clientId = randomUUID();
    const orderId = randomUUID();
    await nursery.as('grower').clients.addClient(sent({ clientId, name: 'Somebody' }));
    await nursery.as('grower').orders.addOrder(
      sent({
        orderId,
        clientId,
        kind: 'pickup' as const,
        dueOn: '2027-05-01',
        lines: [{ lineId: randomUUID(), plantId, containerId: potId, units: 8 }],
      }),
    );
    await nursery.sql(`UPDATE garden_order SET due_on = '9998-05-01' WHERE nursery_id = $1 AND id = $2`, [
      nursery.nurseryId,
      orderId,
    ]);
    expect((await plan()).gaps).toMatchObject([{ reason: 'too-far-ahead', units: 3 }]);
    expect(await nursery.as('viewer').planning.readOutlook({ item: { plantId, containerId: potId } })).toBeDefined();
    expect(await nursery.as('viewer').planning.listTasks({ from: '2026-11-20', until: '2026-12-20' })).toBeDefined();
    await nursery.as('crew').stock.listLots({});
  });

  it('is made from seed of which nothing is pure, which weighs nothing that anybody could say', async () => {
    await nursery.sql('UPDATE source SET seeds_per_gram = 250, purity = 0 WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      sourceId,
    ]);
    const { lines } = await plan();
    expect(lines).toMatchObject([{ sourceId, grams: null }]);
  });
});

describe('a wish', () => {
  it.each(['9998', '9998-05', '9998-spring', '9998-05-01', '2201', '1899-12-31'])(
    'for %s is refused beside its field',
    async (wanted) => {
      expect(
        await refusalOf(
          nursery
            .as('grower')
            .planning.addExpectedDemand(
              sent({ demandId: randomUUID(), plantId, containerId: potId, wanted, units: 7 }),
            ),
        ),
      ).toMatchObject({
        code: 'invalid-input',
        field: 'wanted',
        data: { issues: [{ path: 'wanted', problem: 'far-year', least: 1900, most: 2200 }] },
      });
    },
  );
});
