import { randomUUID } from 'node:crypto';
import { checkLaws } from '../../../apps/server/src/db/check.ts';
import type { TestDatabase } from '../../support/database.ts';
import { sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

/** What photos can belong to, in one nursery. */
export async function addGrounds(nursery: Omit<TestNursery, 'close'>) {
  const { plantId, placeId, lotId, sourceId, containerId } = await stockOf(nursery).addReadyLot();
  const [batchId, clientId, siteId] = [randomUUID(), randomUUID(), randomUUID()];
  await nursery.as().propagation.startBatch(
    sent({
      batchId,
      plantId,
      sourceId,
      method: 'cutting' as const,
      unit: 'piece' as const,
      containerId: null,
      units: 10,
      placeId,
      happenedOn: '2026-05-01',
      targetContainerId: containerId,
    }),
  );
  await nursery.as().clients.addClient(sent({ clientId, name: 'Fen Hollow' }));
  await nursery.as().clients.addSite(sent({ siteId, clientId, name: 'North slope' }));
  const lot = { kind: 'lot' as const, id: lotId };
  const site = { kind: 'site' as const, id: siteId };
  const batch = { kind: 'batch' as const, id: batchId };
  const place = { kind: 'place' as const, id: placeId };
  const plant = { kind: 'plant' as const, id: plantId };
  return { clientId, lot, batch, place, plant, site };
}

/** The laws over a nursery's rows and its store, as `check` proves them an hour later. */
export const proofOf = (database: TestDatabase, { files }: Pick<TestNursery, 'files'>, rehash = true) =>
  checkLaws(database.ownerUrl, { files, rehash, now: new Date(Date.now() + 3_600_000) });
