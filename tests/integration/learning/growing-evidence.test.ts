import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createDatabase, type TestDatabase } from '../../support/database.ts';
import { openServer, sent, type TestNursery } from '../../support/nursery.ts';
import { batchesOf } from '../propagation/batches.ts';
import { addProtocol, evidenceOf } from './evidence.ts';

let database: TestDatabase;
let server: Awaited<ReturnType<typeof openServer>>;
let nursery: TestNursery;
let batches: Awaited<ReturnType<typeof batchesOf>>;

beforeAll(async () => {
  database = await createDatabase();
  server = await openServer(database, { day: '2026-08-20' });
});
beforeEach(async () => {
  nursery = { ...(await server.addNursery()), close: server.close };
  batches = await batchesOf(nursery);
});
afterAll(async () => {
  await server.close();
  await database.drop();
});

const stock = () => nursery.as('grower').stock;
const grown = async () => (await evidenceOf(nursery, batches.plantId))['seed/growing-on'];
const lose = (lotId: string, units: number, happenedOn: string) =>
  stock().loseFromLot(sent({ lotId, units, cause: 'rot' as const, happenedOn }));
const sell = (lotId: string, units: number, happenedOn: string) =>
  stock().sellFromLot(sent({ lotId, units, happenedOn }));
const check = (lotId: string, happenedOn: string) =>
  stock().observeMany(sent({ lotIds: [lotId], kind: 'root-ball' as const, result: 'holds' as const, happenedOn }));

async function potted(units: number, versionId: string | null = null) {
  const { batchId } = await batches.start({ units });
  if (versionId) await nursery.sql('UPDATE batch SET protocol_version_id = $2 WHERE id = $1', [batchId, versionId]);
  await batches.count(batchId, units, '2026-04-01');
  return batches.pot(batchId, units, units, '2026-05-01');
}

describe('what was grown on', () => {
  it('is nothing as long as all of it stands and is not ready', async () => {
    await potted(50);
    expect(await grown()).toBeUndefined();
  });

  it('is failed by what was lost before it was ready, and passed by what was sold', async () => {
    const { lotId } = await potted(50);
    await lose(lotId, 6, '2026-06-01');
    await sell(lotId, 20, '2026-06-20');
    // 24 stand and are nobody's failure yet.
    expect(await grown()).toEqual({ tried: 26, passed: 20, batches: 1 });
  });

  it('is passed once the root ball holds, whatever is lost after', async () => {
    const { lotId } = await potted(50);
    await lose(lotId, 5, '2026-06-01');
    await check(lotId, '2026-07-01');
    await lose(lotId, 9, '2026-07-15');
    expect(await grown()).toEqual({ tried: 50, passed: 45, batches: 1 });
  });

  it('goes on in other pots until it is ready', async () => {
    const { lotId } = await potted(50);
    const bigger = randomUUID();
    await stock().potUpLot(
      sent({
        lotId,
        into: [
          {
            lotId: bigger,
            containerId: await batches.stock.addContainer({ code: 'tall-4l' }),
            placeId: batches.benchId,
            units: 40,
          },
        ],
        happenedOn: '2026-06-01',
      }),
    );
    await lose(bigger, 4, '2026-06-10');
    await check(bigger, '2026-07-01');
    expect(await grown()).toEqual({ tried: 40, passed: 36, batches: 1 });
  });

  it('is over when ready plants are potted up: the bigger pot is another matter', async () => {
    const { lotId } = await potted(50);
    await check(lotId, '2026-06-01');
    const bigger = randomUUID();
    await stock().potUpLot(
      sent({
        lotId,
        into: [
          {
            lotId: bigger,
            containerId: await batches.stock.addContainer({ code: 'tall-4l' }),
            placeId: batches.benchId,
            units: 40,
          },
        ],
        happenedOn: '2026-06-02',
      }),
    );
    await lose(bigger, 40, '2026-06-10');
    expect(await grown()).toEqual({ tried: 50, passed: 50, batches: 1 });
  });

  it('of a merged lot is shared by what each batch brought in', async () => {
    const scarified = await addProtocol(nursery, { plantId: batches.plantId, label: 'scarified' });
    const [one, other, merged] = [await potted(30, scarified), await potted(10), randomUUID()];
    await stock().mergeLots(
      sent({
        lotIds: [one.lotId, other.lotId],
        into: { lotId: merged, placeId: batches.benchId },
        happenedOn: '2026-05-10',
      }),
    );
    await lose(merged, 8, '2026-06-01');
    await check(merged, '2026-07-01');
    const shown = await evidenceOf(nursery, batches.plantId);
    expect([shown['seed/growing-on/scarified'], shown['seed/growing-on']]).toEqual([
      { tried: 30, passed: 24, batches: 1 },
      { tried: 10, passed: 8, batches: 1 },
    ]);
  });

  it('forgets losses and sales that were taken back', async () => {
    const { lotId } = await potted(50);
    const { entryId } = await lose(lotId, 30, '2026-06-01');
    await stock().reverseEntry(sent({ entryId }));
    await sell(lotId, 20, '2026-06-20');
    expect(await grown()).toEqual({ tried: 20, passed: 20, batches: 1 });
  });

  it('takes what a count missed for lost, unless a later count found it again', async () => {
    const { lotId } = await potted(50);
    await stock().countLot(sent({ lotId, countedUnits: 40, countKind: 'counted' as const, happenedOn: '2026-06-01' }));
    expect(await grown()).toEqual({ tried: 10, passed: 0, batches: 1 });
    await stock().countLot(sent({ lotId, countedUnits: 47, countKind: 'counted' as const, happenedOn: '2026-06-10' }));
    expect(await grown()).toEqual({ tried: 3, passed: 0, batches: 1 });
  });

  it('says nothing of plants that were bought', async () => {
    await batches.stock.addLot({
      plantId: batches.plantId,
      containerId: batches.potId,
      sourceId: batches.sourceId,
      placeId: batches.benchId,
    });
    expect(await evidenceOf(nursery, batches.plantId)).toEqual({});
  });
});
