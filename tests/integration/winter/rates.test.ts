import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let lot: Awaited<ReturnType<ReturnType<typeof stockOf>['addReadyLot']>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-05-20' });
});
beforeEach(async () => {
  nursery = { ...(await server.addNursery()), close: server.close };
  await nursery.sql(
    `INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, standing) VALUES ($1, gen_random_uuid(), '04-15', '06-15', 'assumed')`,
    [nursery.nurseryId],
  );
  lot = await stockOf(nursery).addReadyLot({ units: 100, pottedOn: '2025-09-06' });
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const stock = () => nursery.as('grower').stock;
const rates = () => stock().readLivingRates({ lotId: lot.lotId });
const count = (upUnits: number, deadUnits: number, notUpUnits: number, happenedOn: string) =>
  stock().countSpring(
    sent({
      counts: [{ lotId: lot.lotId, placeId: lot.placeId, upUnits, deadUnits, notUpUnits }],
      happenedOn,
      confirmed: true,
    }),
  );

describe('the rates that living counts are reckoned from', () => {
  it('take winter to run from the freeze day to the opening of the first planting window', async () => {
    expect((await rates()).winter).toEqual({ fromMd: '11-15', toMd: '04-14' });
  });

  it('count plant-days and losses outside winter, beside what is assumed', async () => {
    await stock().loseFromLot(
      sent({ lotId: lot.lotId, units: 10, cause: 'drought' as const, happenedOn: '2026-05-10' }),
    );
    const { restsOn, lossRatePerDay } = await rates();
    // 70 days from 6 September to 14 November and 25 from 15 April to 9 May for a hundred, then 10 days for ninety.
    expect(restsOn).toMatchObject({ plantDays: 70 * 100 + 25 * 100 + 10 * 90, losses: 10 });
    // The assumed 0.0003 a day counts as 20 plants' years.
    expect(lossRatePerDay).toBeCloseTo((10 + 0.0003 * 7300) / (10_400 + 7300), 12);
  });

  it("take winter's dead for winter's, and leave those open of which nobody knows yet", async () => {
    await count(70, 10, 20, '2026-05-01');
    const { restsOn, winterSurvival } = await rates();
    expect(restsOn).toMatchObject({ losses: 0, winterPlants: 80, winterLived: 70, winterLots: 1 });
    expect(winterSurvival).toBeCloseTo((70 + 0.9 * 20) / (80 + 20), 12);
  });

  it('follow what became of those that were not up', async () => {
    await count(70, 10, 20, '2026-05-01');
    await count(85, 5, 0, '2026-05-20');
    expect((await rates()).restsOn).toMatchObject({ winterPlants: 100, winterLived: 85 });
  });

  it('add what had been written off to winter before the count', async () => {
    await stock().loseFromLot(
      sent({ lotId: lot.lotId, units: 20, cause: 'winter' as const, happenedOn: '2026-03-20' }),
    );
    await count(80, 0, 0, '2026-05-01');
    expect((await rates()).restsOn).toMatchObject({ winterPlants: 100, winterLived: 80, losses: 0 });
  });

  it('forget a count that was taken back', async () => {
    const { entryId } = await count(50, 50, 0, '2026-05-01');
    await stock().reverseEntry(sent({ entryId }));
    expect((await rates()).restsOn).toMatchObject({ winterPlants: 0, winterLived: 0, winterLots: 0, losses: 0 });
    expect((await rates()).winterSurvival).toBe(0.9);
  });
});
