import { addDays } from '@rootclock/domain';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openNursery, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

// Freireich et al. 1963, Blood 21:699–716, as printed by Gehan 1965, Biometrika 52:203–223: weeks in remission under 6-MP, and under placebo.
const TREATED = { died: [6, 6, 6, 7, 10, 13, 16, 22, 23], left: [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35] };
const PLACEBO = { died: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23], left: [] };

/** Weeks, at risk, events, share left and its standard error, as published. */
const PUBLISHED: [number, number, number, number, number][] = [
  [6, 21, 3, 0.857, 0.0764],
  [7, 17, 1, 0.807, 0.0869],
  [10, 15, 1, 0.753, 0.0963],
  [13, 12, 1, 0.69, 0.1068],
  [16, 11, 1, 0.627, 0.1141],
  [22, 7, 1, 0.538, 0.1282],
  [23, 6, 1, 0.448, 0.1346],
];

const POTTED_ON = '2025-03-03';
let database: TestDatabase;
let nursery: TestNursery;

beforeAll(async () => {
  database = await createDatabase();
  nursery = await openNursery(database, { day: '2026-01-10' });
});
afterAll(async () => {
  await nursery.close();
  await database.drop();
});

/** One lot of one plant for each of the trial's people: lost in the week of the event, sold in the week in which the watch on them ended. */
async function grow(code: string, { died, left }: { died: number[]; left: number[] }) {
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant({ name: `Asclepias ${code.toLowerCase()}`, code });
  const rows = {
    plantId,
    containerId: await stock.addContainer({ code: `pot-${code}` }),
    sourceId: await stock.addSource(plantId),
    placeId: await stock.addPlace(),
    units: 1,
    pottedOn: POTTED_ON,
  };
  for (const weeks of died)
    await nursery.as('grower').stock.loseFromLot(
      sent({
        lotId: await stock.addLot(rows),
        units: 1,
        cause: 'unknown' as const,
        happenedOn: addDays(POTTED_ON, weeks * 7),
      }),
    );
  for (const weeks of left)
    await nursery
      .as('grower')
      .stock.sellFromLot(
        sent({ lotId: await stock.addLot(rows), units: 1, happenedOn: addDays(POTTED_ON, weeks * 7) }),
      );
  const { survivals } = await nursery.as('grower').propagation.readPlantRecord({ plantId });
  return survivals[0];
}

it('a published trial, kept as lots of one plant each, ends in its published table', async () => {
  const curve = await grow('TREA', TREATED);
  expect(curve?.steps.map(({ days, atRisk, died }) => [days / 7, atRisk, died])).toEqual(
    PUBLISHED.map(([weeks, atRisk, died]) => [weeks, atRisk, died]),
  );
  for (const [index, [, , , survival, standardError]] of PUBLISHED.entries()) {
    expect(curve?.steps[index]?.survival).toBeCloseTo(survival, 3);
    expect(curve?.steps[index]?.standardError).toBeCloseTo(standardError, 4);
  }
  expect([curve?.plants, curve?.died, curve?.medianDays]).toEqual([21, 9, 23 * 7]);
});

it('the other arm of the trial ends in its published median', async () => {
  const curve = await grow('PLAC', PLACEBO);
  expect([curve?.plants, curve?.died, curve?.medianDays]).toEqual([21, 21, 8 * 7]);
});
