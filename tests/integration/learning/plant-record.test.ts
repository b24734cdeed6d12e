import { randomUUID } from 'node:crypto';
import { addDays } from '@rootclock/domain';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, refusalOf, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';
import { addProtocol } from './evidence.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-09-01' });
});
beforeEach(async () => {
  server.clock.set('2026-09-01');
  nursery = { ...(await server.addNursery()), close: server.close };
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const as = () => nursery.as('grower');
const record = () => as().propagation.readPlantRecord({ plantId: batches.plantId });
const check = (lotId: string, happenedOn: string) =>
  as().stock.observeMany(sent({ lotIds: [lotId], kind: 'root-ball' as const, result: 'holds' as const, happenedOn }));

async function potted(startedOn: string, pottedOn: string, units = 20) {
  const { batchId } = await batches.start({ units, on: startedOn });
  await batches.count(batchId, units, addDays(startedOn, 10));
  return batches.pot(batchId, units, units, pottedOn);
}

describe('the time to ready', () => {
  it('counts from the start to the first potting and to the first root ball that holds, and batches under way as long as they were watched', async () => {
    const first = await potted('2026-03-01', '2026-04-30');
    await check(first.lotId, '2026-06-09');
    // A later check says nothing new.
    await check(first.lotId, '2026-08-01');
    const second = await potted('2026-03-01', '2026-05-10');
    await check(second.lotId, '2026-06-29');
    await batches.start({ on: '2026-07-03' });
    const [seed] = (await record()).times;
    // Potted after 60 and 70 days, one is watched for 60 so far; ready after 100 and 120 days.
    expect(seed).toEqual({
      method: 'seed',
      toPotting: { batches: 3, unfinished: 1, lowDays: 60, medianDays: 70, highDays: 70 },
      toReady: { batches: 3, unfinished: 1, lowDays: 100, medianDays: 100, highDays: 120 },
    });
  });

  it('leaves out a batch that gave nothing', async () => {
    const { batchId } = await batches.start({ on: '2026-03-01' });
    await batches.propagation.closeBatch(sent({ batchId, writeOffCause: 'failed' as const, happenedOn: '2026-06-01' }));
    expect((await record()).times).toEqual([]);
  });
});

describe('losses by season', () => {
  it('are deaths over plant-days, with what winter took counted to winter', async () => {
    const { lotId } = await potted('2026-03-01', '2026-05-22', 50);
    await as().stock.loseFromLot(sent({ lotId, units: 10, cause: 'drought' as const, happenedOn: '2026-06-11' }));
    const seasons = Object.fromEntries(
      (await record()).losses.map(({ season, plantDays, losses, rate }) => [season, { plantDays, losses, rate }]),
    );
    // 10 days of May for 50; 10 days of June for 50 and 82 days up to 1 September for 40.
    expect(seasons).toEqual({
      spring: { plantDays: 500, losses: 0, rate: 0 },
      summer: { plantDays: 3780, losses: 10, rate: 10 / 3780 },
      autumn: { plantDays: 0, losses: 0, rate: null },
      winter: { plantDays: 0, losses: 0, rate: null },
    });
  });
});

describe('life in the pot', () => {
  it('ends with a loss, and leaves the watch with a sale, a bigger pot or today', async () => {
    const { lotId } = await potted('2026-03-01', '2026-05-04', 40);
    await as().stock.loseFromLot(sent({ lotId, units: 10, cause: 'rot' as const, happenedOn: '2026-05-24' }));
    await as().stock.sellFromLot(sent({ lotId, units: 5, happenedOn: '2026-06-03' }));
    await as().stock.potUpLot(
      sent({
        lotId,
        into: [
          {
            lotId: randomUUID(),
            containerId: await batches.stock.addContainer({ code: 'tall-4l' }),
            placeId: batches.benchId,
            units: 5,
          },
        ],
        happenedOn: '2026-06-03',
      }),
    );
    await as().stock.loseFromLot(sent({ lotId, units: 4, cause: 'rot' as const, happenedOn: '2026-06-13' }));
    const [curve] = (await record()).survivals;
    expect(curve).toMatchObject({ plants: 40, died: 14, lastDays: 120, medianDays: null });
    // 10 of 40 on day 20, 4 of 20 on day 40.
    expect(curve?.steps.map(({ days, atRisk, died, survival }) => ({ days, atRisk, died, survival }))).toEqual([
      { days: 20, atRisk: 40, died: 10, survival: 0.75 },
      { days: 40, atRisk: 20, died: 4, survival: 0.75 * 0.8 },
    ]);
  });

  it('leaves the watch, and is no loss, where plants were discarded', async () => {
    const { lotId } = await potted('2026-03-01', '2026-05-04', 40);
    await as().stock.loseFromLot(sent({ lotId, units: 30, cause: 'discarded' as const, happenedOn: '2026-05-24' }));
    const {
      survivals: [curve],
      losses,
    } = await record();
    expect([curve?.plants, curve?.died, losses.reduce((sum, season) => sum + season.losses, 0)]).toEqual([40, 0, 0]);
  });

  it('goes on under another label where a lot is split', async () => {
    const { lotId } = await potted('2026-03-01', '2026-05-04', 40);
    const part = randomUUID();
    await as().stock.splitLot(
      sent({ lotId, into: [{ lotId: part, placeId: batches.frameId, units: 15 }], happenedOn: '2026-05-14' }),
    );
    await as().stock.loseFromLot(sent({ lotId: part, units: 15, cause: 'rot' as const, happenedOn: '2026-05-24' }));
    const [curve] = (await record()).survivals;
    expect([curve?.plants, curve?.steps.map(({ days, atRisk, died }) => [days, atRisk, died])]).toEqual([
      40,
      [[20, 40, 15]],
    ]);
  });

  it('carries the limits of the rules that bind, in days', async () => {
    await nursery.as('owner').potLife.addRule(
      sent({
        ruleId: randomUUID(),
        basis: 'confined' as const,
        reach: { genus: 'Asclepias' },
        span: 'P1Y',
        winterCarry: null,
      }),
    );
    await nursery.as('owner').potLife.addRule(
      sent({
        ruleId: randomUUID(),
        basis: 'container' as const,
        reach: { plantId: batches.plantId },
        span: 'P170D',
        winterCarry: null,
      }),
    );
    await potted('2026-03-01', '2026-05-04', 40);
    expect((await record()).survivals[0]?.limits).toEqual([
      { basis: 'container', span: 'P170D', days: 170 },
      { basis: 'confined', span: 'P1Y', days: 365 },
    ]);
  });
});

describe('the record', () => {
  it('puts the counts beside what the protocol says, and names plants of which nothing is counted yet', async () => {
    await addProtocol(nursery, { plantId: batches.plantId, share: 0.7 });
    const { plants, shares } = await as().propagation.readRecord({});
    expect(plants).toMatchObject([{ plantId: batches.plantId, scientificName: 'Asclepias tuberosa' }]);
    expect(shares).toMatchObject([
      {
        method: 'seed',
        label: '',
        evidence: [],
        protocol: {
          stages: [
            { kind: 'emergence', share: 0.7, standing: 'assumed' },
            { kind: 'pricking-out' },
            { kind: 'growing-on' },
          ],
        },
      },
    ]);
  });

  it('shows counts without a protocol by themselves', async () => {
    await potted('2026-03-01', '2026-05-04', 40);
    const { shares } = await as().propagation.readRecord({});
    expect(shares).toMatchObject([
      {
        protocol: null,
        evidence: [{ stage: 'emergence', tried: 40, passed: 40, batches: 1 }, { stage: 'pricking-out' }],
      },
    ]);
  });

  it("answers another nursery's plant as not found", async () => {
    expect(await refusalOf(as().propagation.readPlantRecord({ plantId: randomUUID() }))).toMatchObject({
      code: 'not-found',
      field: 'plantId',
    });
  });
});

describe('how counts are weighed', () => {
  const settings = { priorWeight: 40, evidenceLimit: 200, planConfidencePercent: 80, winterSurvivalPercent: 85 };

  it("is the owner's to set, and the winter survival becomes the nursery's own", async () => {
    expect((await as().propagation.readRecord({})).settings).toMatchObject({
      priorWeight: 20,
      evidenceLimit: 400,
      planConfidence: 0.9,
      winterSurvival: 0.9,
      winterStanding: 'assumed',
    });
    await nursery.as('owner').propagation.setLearning(sent(settings));
    expect((await as().propagation.readRecord({})).settings).toMatchObject({
      priorWeight: 40,
      evidenceLimit: 200,
      planConfidence: 0.8,
      winterSurvival: 0.85,
      winterStanding: 'own setting',
    });
    expect(await refusalOf(as().propagation.setLearning(sent(settings)))).toMatchObject({ code: 'not-allowed' });
  });

  it('leaves the standing of a winter survival that stays as it was', async () => {
    await nursery.as('owner').propagation.setLearning(sent({ ...settings, winterSurvivalPercent: 90 }));
    expect((await as().propagation.readRecord({})).settings.winterStanding).toBe('assumed');
  });

  it.each([
    ['priorWeight', 0],
    ['evidenceLimit', 9],
    ['planConfidencePercent', 100],
    ['winterSurvivalPercent', 120],
  ] as const)('refuses a %s of %d', async (field, value) => {
    expect(
      await refusalOf(nursery.as('owner').propagation.setLearning(sent({ ...settings, [field]: value }))),
    ).toMatchObject({ code: 'invalid-input', field });
  });
});
