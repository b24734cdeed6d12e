import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { addProtocol } from '../../support/protocols.ts';
import { stockOf } from '../../support/stock.ts';

const id = randomUUID;
let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: Pick<TestNursery, 'nurseryId' | 'sql' | 'as'>;
let plantId: string;
let trayId: string;
let potId: string;
let placeId: string;
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
  trayId = await stock.addContainer({ code: 'plug-50', kind: 'tray', volumeMl: 60, cells: 50 });
  potId = await stock.addContainer({ code: 'tall-1l', volumeMl: 850 });
  await nursery.sql('UPDATE container SET width_mm = 300, length_mm = 500 WHERE nursery_id = $1 AND id = $2', [
    nursery.nurseryId,
    trayId,
  ]);
  await nursery.sql('UPDATE container SET width_mm = 100, length_mm = 100 WHERE nursery_id = $1 AND id = $2', [
    nursery.nurseryId,
    potId,
  ]);
  placeId = await stock.addPlace();
  sourceId = await stock.addSource(plantId, { kind: 'seed-collection' });
});

/** Sown, up after 20 to 30 days, potted, ready 60 to 80 days later. */
const withProtocol = () =>
  addProtocol(nursery, {
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
const expectPlants = (more: { wanted?: string; units?: number; unitValueMinor?: number; plantId?: string } = {}) =>
  nursery
    .as('grower')
    .planning.addExpectedDemand(
      sent({ demandId: id(), plantId, containerId: potId, wanted: '2027-06-01', units: 40, ...more }),
    );
const plan = (confidence?: number) => nursery.as('viewer').planning.readPlan({ confidence });
const weigh = (grams: number, seedsPerGram = 250, purity = 0.8) =>
  nursery.sql(
    `WITH s AS (UPDATE source SET seeds_per_gram = $3, purity = $4 WHERE nursery_id = $1 AND id = $2)
   INSERT INTO seed_movement (nursery_id, id, source_id, kind, grams, happened_on, recorded_at, command_id) VALUES ($1, $5, $2, 'gathered', $6, '2026-09-01', '2026-09-01', $5)`,
    [nursery.nurseryId, sourceId, seedsPerGram, purity, id(), grams],
  );

describe('a plan', () => {
  it('starts what is missing, reckoned from the protocol', async () => {
    const { versionId } = await withProtocol();
    await weigh(10);
    await expectPlants();
    const { lines, gaps, missingUnits, servedUnits, confidence } = await plan();
    expect({ gaps, missingUnits, servedUnits, confidence }).toEqual({
      gaps: [],
      missingUnits: 40,
      servedUnits: 40,
      confidence: 0.9,
    });
    // Two seeds at 0.5 fill 0.75 of the cells and 0.9 grow on, each worth 20 plants: 0.675 in the mean, so that 40 plants take more than 60 cells and two trays.
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({
      plantId,
      containerId: potId,
      versionId,
      sourceId,
      state: 'coming',
      wantedUnits: 40,
      plants: 40,
      trays: 2,
      counted: 100,
      units: 100,
      seeds: 200,
      cellsPerTray: 50,
      // At 0.9 the long durations count: 30 + 80 days before the first of June.
      startOn: '2027-02-11',
      targetOn: '2027-06-01',
      usualReadyOn: '2027-05-02',
      gramsLeft: 10,
      start: {
        plantId,
        sourceId,
        method: 'seed',
        unit: 'cell',
        trays: 2,
        units: null,
        containerId: trayId,
        targetContainerId: potId,
        protocolVersionId: versionId,
        seedsSown: 200,
        readyOn: '2027-06-01',
      },
    });
    // 200 seeds of which 250 make a gram and 0.8 of the weight is seed.
    expect(lines[0]?.grams).toBeCloseTo(200 / (250 * 0.8), 10);
    // 100 cells of 60 ml and 75 pots of 850 ml, packed down by 0.15.
    expect(lines[0]?.mediumLitres).toBeCloseTo((100 * 0.06 + 75 * 0.85) / 0.85, 6);
    expect(lines[0]?.forWhom).toMatchObject([{ kind: 'expected', units: 40, servedUnits: 40, orderCode: null }]);
  });

  it('starts later and less where less sureness is asked for', async () => {
    await withProtocol();
    await expectPlants();
    const [line] = (await plan(0.5)).lines;
    expect(line).toMatchObject({ startOn: '2027-03-13', usualReadyOn: '2027-06-01', trays: 2 });
  });

  it('takes what stands and will live on into account', async () => {
    await withProtocol();
    await nursery.sql('UPDATE nursery SET winter_survival = 0.8, prior_weight = 10000 WHERE id = $1', [
      nursery.nurseryId,
    ]);
    await stockOf(nursery).addLot({
      plantId,
      containerId: potId,
      sourceId,
      placeId,
      units: 30,
      pottedOn: '2026-09-01',
    });
    await expectPlants();
    const { missingUnits } = await plan();
    // 0.8 of the 30 live through a whole winter, of which five days are past; in the 62 days after it about 3 in 10,000 a day are lost: more than 23 are left, but no 24th.
    expect(missingUnits).toBe(40 - 23);
  });

  it('serves orders and names them', async () => {
    await withProtocol();
    const clientId = id();
    const orderId = id();
    await nursery.as('grower').clients.addClient(sent({ clientId, name: 'Alder Mill' }));
    await nursery.as('grower').orders.addOrder(
      sent({
        orderId,
        clientId,
        kind: 'contract-growing' as const,
        dueOn: '2027-07-01',
        lines: [{ lineId: id(), plantId, containerId: potId, units: 12 }],
      }),
    );
    const { lines, counts } = await plan();
    expect(lines[0]?.forWhom).toMatchObject([
      { kind: 'contract-growing', orderId, clientName: 'Alder Mill', units: 12, servedUnits: 12 },
    ]);
    expect(counts).toEqual({ orderLines: 1, expected: 0, supplies: 0 });
  });

  it('says when a plant has no protocol, and when it has no source', async () => {
    await expectPlants();
    expect((await plan()).gaps).toMatchObject([
      { reason: 'no-protocol', units: 40, scientificName: 'Asclepias tuberosa' },
    ]);
    await withProtocol();
    await nursery.sql(`UPDATE source SET retired_at = now() WHERE nursery_id = $1`, [nursery.nurseryId]);
    expect((await plan()).gaps).toMatchObject([{ reason: 'no-source', units: 40 }]);
  });

  it('starts what the seed allows and says what it lacks', async () => {
    await withProtocol();
    await weigh(0.6);
    await expectPlants();
    const { lines, gaps } = await plan();
    // A tray of 50 cells takes 100 seeds, half a gram; two would take a whole one.
    expect(lines).toMatchObject([{ trays: 1, grams: 0.5, gramsLeft: 0.6 }]);
    expect(gaps).toMatchObject([
      { reason: 'not-enough-seed', units: 40 - (lines[0]?.plants ?? 0), grams: { needed: 1, left: 0.6 } },
    ]);
  });

  it('tells what is too late, and from when it can be there', async () => {
    await withProtocol();
    await expectPlants({ wanted: '2026-12-31' });
    const { lines, tooLate } = await plan();
    expect(lines).toEqual([]);
    // Quickly 60 days from 20 November, surely 110.
    expect(tooLate).toMatchObject([
      {
        state: 'too-late',
        startOn: '2026-11-20',
        missedOn: '2026-09-12',
        readyOn: '2027-03-10',
        usualReadyOn: '2027-02-08',
        servesOn: '2027-03-10',
      },
    ]);
  });

  it('tells what is overdue and may still be in time', async () => {
    await withProtocol();
    await expectPlants({ wanted: '2027-02-01' });
    expect((await plan()).lines).toMatchObject([
      {
        state: 'overdue',
        missedOn: '2026-10-14',
        startOn: '2026-11-20',
        targetOn: '2027-02-01',
        usualReadyOn: '2027-02-08',
        readyOn: '2027-03-10',
      },
    ]);
  });

  it('is empty with a reason to be so where nothing is wanted', async () => {
    expect(await plan()).toMatchObject({
      lines: [],
      tooLate: [],
      gaps: [],
      counts: { orderLines: 0, expected: 0, supplies: 0 },
      capacityCm2: null,
    });
  });

  it('leaves out what the bench has no room for, the least valuable first', async () => {
    await withProtocol();
    const otherId = await stockOf(nursery).addPlant({ name: 'Liatris aspera', code: 'LIAS' });
    await stockOf(nursery).addSource(otherId, { kind: 'seed-collection' });
    await addProtocol(nursery, {
      plantId: otherId,
      startContainerId: trayId,
      targetContainerId: potId,
      seedsPerCell: 2,
      stages: [
        { kind: 'sowing', days: 0 },
        { kind: 'emergence', days: [10, 20, 30], share: 0.5 },
        { kind: 'growing-on', days: [50, 60, 80], share: 0.9 },
      ],
    });
    await expectPlants({ unitValueMinor: 500 });
    await expectPlants({ plantId: otherId, unitValueMinor: 800 });
    // Each takes two trays of 1,500 cm² and then 75 pots of 100 cm².
    await nursery.sql('UPDATE place SET bench_area_m2 = 0.75 WHERE nursery_id = $1', [nursery.nurseryId]);
    const { lines, gaps, weeks, capacityCm2, within } = await plan();
    expect({ capacityCm2, within }).toEqual({ capacityCm2: 7500, within: 0 });
    expect(lines.map((line) => [line.plantId, line.plants])).toEqual([[otherId, 40]]);
    expect(gaps).toMatchObject([{ plantId, reason: 'no-space', units: 40 }]);
    expect(gaps[0]?.fullWeeks[0]).toBe('2027-03-08');
    const of = (startsOn: string) => weeks.find((week) => week.startsOn === startsOn);
    expect([
      of('2027-02-01')?.plannedCm2,
      of('2027-02-08')?.plannedCm2,
      of('2027-03-15')?.plannedCm2,
      of('2027-05-31')?.plannedCm2,
      of('2027-06-07')?.plannedCm2,
    ]).toEqual([0, 3000, 7500, 7500, 0]);
  });

  it('counts what stands on measured benches against them', async () => {
    await withProtocol();
    await stockOf(nursery).addLot({
      plantId,
      containerId: potId,
      sourceId,
      placeId,
      units: 30,
      pottedOn: '2026-09-01',
    });
    await nursery.sql('UPDATE place SET bench_area_m2 = 5 WHERE nursery_id = $1', [nursery.nurseryId]);
    await expectPlants({ units: 10, wanted: '2026-12-16' });
    const { weeks } = await plan();
    // All 30 up to the week in which ten of them are fetched.
    expect([weeks[0]?.standingCm2, weeks[4]?.standingCm2, weeks[5]?.standingCm2]).toEqual([3000, 3000, 2000]);
  });
});

it('a confidence that is none is refused', async () => {
  expect((await refusalOf(plan(0.2))).code).toBe('invalid-input');
});

it('another nursery sees nothing of it', async () => {
  await withProtocol();
  await expectPlants();
  const other = await server.addNursery();
  expect(await other.as('owner').planning.readPlan({})).toMatchObject({ lines: [], gaps: [], missingUnits: 0 });
});
