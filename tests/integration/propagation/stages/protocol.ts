import { randomUUID } from 'node:crypto';
import type { BatchUnit, PropagationMethod, StageKind } from '@rootclock/domain';
import { sent, type TestNursery } from '../../../support/nursery.ts';
import { batchesOf } from '../batches.ts';

export interface StageOf {
  kind: StageKind;
  days: [short: number, usual: number, long: number];
  share?: number;
  season?: { fromMd: string; toMd: string };
  rests?: boolean;
}

/** Seed that lies cold for a month, is sown in cells, comes up within some weeks and grows on. */
export const MILKWEED: StageOf[] = [
  { kind: 'stratification', days: [28, 30, 60] },
  { kind: 'sowing', days: [0, 0, 0] },
  { kind: 'emergence', days: [7, 14, 28], share: 0.7 },
  { kind: 'growing-on', days: [50, 60, 80], share: 0.9 },
  { kind: 'ready', days: [0, 0, 0] },
];

/** What the tests of stages begin with: the plant, source, trays and places of the tests of batches, and protocols written by the real command. */
export async function stagesOf(nursery: TestNursery, plant?: { code: string; name: string }) {
  const batches = await batchesOf(nursery, plant);

  async function addProtocol({
    method = 'seed' as PropagationMethod,
    label = '',
    stages = MILKWEED,
    startUnit = 'cell' as BatchUnit,
    seedsPerCell = null as number | null,
    plantId = batches.plantId,
  } = {}) {
    const protocolId = randomUUID();
    const versionId = randomUUID();
    await nursery.as('grower').propagation.addProtocol(
      sent({
        protocolId,
        versionId,
        plantId,
        method,
        label,
        startUnit,
        startContainerId: startUnit === 'cell' ? batches.trayId : null,
        targetContainerId: batches.potId,
        seedsPerCell,
        stages: stages.map(({ kind, days: [shortDays, usualDays, longDays], share = 1, season, rests = false }) => ({
          kind,
          shortDays,
          usualDays,
          longDays,
          share,
          rests,
          ...(season ? { season } : {}),
        })),
      }),
    );
    return { protocolId, versionId };
  }

  /** A start that leaves to the protocol what it can say. */
  const startBody = (protocolVersionId: string) => ({
    batchId: randomUUID(),
    plantId: batches.plantId,
    sourceId: batches.sourceId,
    method: 'seed' as const,
    protocolVersionId,
    units: 100,
    placeId: batches.benchId,
    happenedOn: '2026-03-01',
  });

  async function startUnder(versionId: string, changes: object = {}) {
    const body = { ...startBody(versionId), ...changes };
    const { entryId, code } = await batches.propagation.startBatch(sent(body));
    return { batchId: body.batchId, entryId, code };
  }

  const begin = (batchId: string, position: number, happenedOn: string) =>
    batches.propagation.beginBatchStage(sent({ batchId, position, happenedOn }));
  const stage = async (batchId: string) =>
    (
      await nursery.sql<{
        position: number | null;
        kind: string | null;
        begunOn: string | null;
        dueOn: string | null;
        lateOn: string | null;
      }>(
        `SELECT stage_position AS position, stage_kind AS kind, stage_begun_on::text AS "begunOn", stage_due_on::text AS "dueOn", stage_late_on::text AS "lateOn"
       FROM batch WHERE nursery_id = $1 AND id = $2`,
        [nursery.nurseryId, batchId],
      )
    )[0];
  const reverse = (entryId: string) => nursery.as('grower').stock.reverseEntry(sent({ entryId }));

  return { ...batches, addProtocol, startBody, startUnder, begin, stage, reverse };
}
