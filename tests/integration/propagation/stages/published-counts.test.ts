import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../../support/nursery.ts';
import { batchesOf } from '../batches.ts';

let database: TestDatabase;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database);
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

const startDish = async (seeds: number) => {
  const { batchId } = await batches.start({ units: seeds, on: '2026-04-01' });
  return batchId;
};

/**
 * Mead, Curnow & Hasted, Statistical Methods in Agriculture and Experimental Biology, 3rd ed. 2002, pp. 350–351, as published with the authors' permission
 * in the R package agridat (mead.germination): seeds germinated of 50 in each replicate, by temperature and by concentration (0, 0.1, 1, 10).
 */
const MEAD: Record<string, readonly (readonly [number, number, number, number])[]> = {
  T1: [
    [9, 9, 3, 7],
    [13, 12, 14, 15],
    [21, 23, 24, 27],
    [40, 32, 43, 34],
  ],
  T2: [
    [19, 30, 21, 29],
    [33, 32, 30, 26],
    [43, 40, 37, 41],
    [48, 48, 49, 48],
  ],
  T3: [
    [7, 7, 2, 5],
    [1, 2, 4, 4],
    [8, 10, 6, 7],
    [3, 4, 8, 5],
  ],
  T4: [
    [4, 9, 3, 7],
    [13, 6, 15, 7],
    [16, 13, 18, 19],
    [13, 18, 11, 16],
  ],
};
const CONCENTRATIONS = ['0', '.1', '1', '10'];

describe('a published germination experiment, entered count by count', () => {
  it('ends in the published totals', async () => {
    const entered: { temperature: string; concentration: string; batchId: string }[] = [];
    for (const [temperature, cells] of Object.entries(MEAD)) {
      for (const [at, replicates] of cells.entries()) {
        for (const germinated of replicates) {
          const batchId = await startDish(50);
          await batches.count(batchId, germinated, '2026-04-15');
          entered.push({ temperature, concentration: CONCENTRATIONS[at] ?? '', batchId });
        }
      }
    }
    const { rows } = await batches.propagation.listBatches({ plantId: batches.plantId, sort: 'code', perPage: 100 });
    const sum = (of: typeof entered, what: 'emergedUnits' | 'startedUnits') =>
      of.reduce((total, { batchId }) => total + (rows.find((row) => row.batchId === batchId)?.[what] ?? Number.NaN), 0);
    const cell = (temperature: string, concentration: string) =>
      entered.filter((dish) => dish.temperature === temperature && dish.concentration === concentration);
    expect([sum(entered, 'emergedUnits'), sum(entered, 'startedUnits')]).toEqual([1171, 3200]);
    expect([sum(cell('T2', '10'), 'emergedUnits'), sum(cell('T2', '10'), 'startedUnits')]).toEqual([193, 200]);
    expect([sum(cell('T3', '.1'), 'emergedUnits'), sum(cell('T3', '.1'), 'startedUnits')]).toEqual([11, 200]);
  });
});

describe('published daily counts, entered day by day', () => {
  /** 50 seeds, newly germinated on days 1 to 14: tests of the R package germinationmetrics (Aravind et al.). */
  const DAILY = [0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0];
  const dayAt = (index: number) => `2026-04-${String(index + 2).padStart(2, '0')}`;

  async function enterDaily(batchId: string) {
    let alive = 0;
    for (const [index, newly] of DAILY.entries()) {
      alive += newly;
      await batches.count(batchId, alive, dayAt(index));
    }
  }

  it('make the published course for cells with a seed each', async () => {
    const batchId = await startDish(50);
    await enterDaily(batchId);
    const { figures } = await batches.page(batchId);
    expect(figures).toMatchObject({ percentage: 80, sown: 50, counts: 14 });
    expect(figures?.meanTimeDays).toBeCloseTo(6.7, 10);
    expect(figures?.t50Coolbear).toBeCloseTo(5.97058823529412, 10);
    expect(figures?.t50Farooq).toBeCloseTo(5.94117647058824, 10);
    expect(figures?.speed).toBeCloseTo(6.13892496392496, 10);
  });
  it('make the same course for a flat with its seeds counted', async () => {
    const batchId = randomUUID();
    await batches.propagation.startBatch(
      sent({
        batchId,
        plantId: batches.plantId,
        sourceId: batches.sourceId,
        method: 'seed' as const,
        unit: 'tray' as const,
        containerId: batches.flatId,
        units: 1,
        seedsSown: 50,
        placeId: batches.benchId,
        happenedOn: '2026-04-01',
      }),
    );
    await enterDaily(batchId);
    expect((await batches.page(batchId)).figures).toMatchObject({ percentage: 80, sown: 50 });
  });
  it('make no course of a flat into which nobody knows how many seeds went', async () => {
    const { batchId } = await batches.start({ unit: 'tray', units: 1, on: '2026-04-01' });
    await batches.count(batchId, 40, '2026-04-15');
    expect((await batches.page(batchId)).figures).toBeNull();
  });
});

describe('the course of earlier batches', () => {
  it('stands beside that of a batch of the same plant and method, the latest first, each with what was sown', async () => {
    const other = await batchesOf(nursery, { code: 'MOFI', name: 'Monarda fistulosa' });
    const course = async (units: number, on: string, counts: [number, string][]) => {
      const { batchId } = await other.start({ units, on });
      for (const [alive, day] of counts) await other.count(batchId, alive, day);
      return batchId;
    };
    const oldest = await course(72, '2025-03-01', [
      [10, '2025-03-12'],
      [50, '2025-03-25'],
    ]);
    const once = await course(72, '2025-06-01', [[10, '2025-06-12']]);
    const older = await course(144, '2025-09-01', [
      [20, '2025-09-12'],
      [90, '2025-09-25'],
    ]);
    const { batchId: cuttings } = await other.start({ method: 'cutting', units: 20, on: '2025-07-01' });
    const now = await course(100, '2026-03-01', [
      [1, '2026-03-09'],
      [60, '2026-03-20'],
    ]);
    const { earlier } = await other.page(now);
    expect(earlier).toEqual([
      {
        batchId: older,
        code: expect.any(String),
        startedOn: '2025-09-01',
        unit: 'cell',
        sown: 144,
        counts: [
          { on: '2025-09-12', emergedUnits: 20 },
          { on: '2025-09-25', emergedUnits: 90 },
        ],
      },
      {
        batchId: oldest,
        code: expect.any(String),
        startedOn: '2025-03-01',
        unit: 'cell',
        sown: 72,
        counts: [
          { on: '2025-03-12', emergedUnits: 10 },
          { on: '2025-03-25', emergedUnits: 50 },
        ],
      },
    ]);
    expect([once, cuttings].some((id) => earlier.some(({ batchId }) => batchId === id))).toBe(false);
  });
});
