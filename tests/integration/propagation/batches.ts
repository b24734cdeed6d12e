import { randomUUID } from 'node:crypto';
import type { BatchUnit, PropagationMethod } from '@rootclock/domain';
import { type TestNursery, sent } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';

/** What the tests of batches begin with: one milkweed with its source, trays, pots and two benches, and starts through the real command. */
export async function batchesOf(nursery: TestNursery, { code = 'ASTU', name = 'Asclepias tuberosa' } = {}) {
  const stock = stockOf(nursery);
  const plantId = await stock.addPlant({ code, name });
  const sourceId = await stock.addSource(plantId);
  const trayId = await stock.addContainer({
    code: `plug-${code}`,
    kind: 'tray',
    volumeMl: 60,
    depthMm: 100,
    cells: 72,
  });
  const flatId = await stock.addContainer({ code: `flat-${code}`, kind: 'flat', volumeMl: null });
  const potId = await stock.addContainer({ code: `pot-${code}`, kind: 'pot' });
  const benchId = await stock.addPlace();
  const frameId = await stock.addPlace({ kind: 'cold-frame', winterCover: true });
  const propagation = nursery.as('grower').propagation;

  /** A batch in cells unless said otherwise. */
  async function start({
    method = 'seed' as PropagationMethod,
    unit = 'cell' as BatchUnit,
    units = 100,
    on = '2026-03-01',
    containerId = (unit === 'cell' ? trayId : unit === 'tray' ? flatId : null) as string | null,
    cautiousUnits = 0,
    readyOn = null as string | null,
  } = {}) {
    const batchId = randomUUID();
    const { entryId, code: batchCode } = await propagation.startBatch(
      sent({
        batchId,
        plantId,
        sourceId,
        method,
        unit,
        containerId,
        units,
        placeId: benchId,
        happenedOn: on,
        targetContainerId: potId,
        cautiousUnits,
        readyOn,
      }),
    );
    return { batchId, entryId, code: batchCode };
  }

  const count = (batchId: string, emergedUnits: number, happenedOn: string) =>
    propagation.countBatch(sent({ batchId, emergedUnits, countKind: 'counted' as const, happenedOn }));

  async function pot(
    batchId: string,
    unitsOut: number,
    pottedUnits: number,
    happenedOn: string,
    more: { lotId?: string; into?: 'new' | 'existing'; containerId?: string | null; firstAlive?: string } = {},
  ) {
    const { lotId = randomUUID(), into = 'new', containerId = potId, firstAlive } = more;
    const answer = await propagation.potBatch(
      sent({
        batchId,
        happenedOn,
        ...(firstAlive ? { firstAlive } : {}),
        lots: [{ lotId, into, containerId, placeId: benchId, unitsOut, pottedUnits }],
      }),
    );
    return { lotId, entryId: answer.entryId };
  }

  const page = (batchId: string) => propagation.readBatch({ batchId });

  const lot = async (lotId: string) =>
    (
      await nursery.sql<{
        confined_on: string | null;
        confined_standing: string;
        container_on: string | null;
        potted_on: string;
        ready_on: string | null;
        code: string;
      }>(
        `SELECT confined_on::text, confined_standing, container_on::text, potted_on::text, ready_on::text, code FROM lot WHERE nursery_id = $1 AND id = $2`,
        [nursery.nurseryId, lotId],
      )
    )[0];

  /** Units that left the batch for an outside account. */
  const left = async (batchId: string, outside: string) =>
    (
      await nursery.sql<{ units: number }>(
        `SELECT coalesce(sum(m.from_units), 0)::int AS units FROM movement m JOIN account f ON f.nursery_id = m.nursery_id AND f.id = m.from_account_id
       JOIN account t ON t.nursery_id = m.nursery_id AND t.id = m.to_account_id WHERE m.nursery_id = $1 AND f.batch_id = $2 AND t.outside = $3`,
        [nursery.nurseryId, batchId, outside],
      )
    )[0]?.units ?? 0;

  return {
    stock,
    plantId,
    sourceId,
    trayId,
    flatId,
    potId,
    benchId,
    frameId,
    propagation,
    start,
    count,
    pot,
    page,
    lot,
    left,
  };
}
