import { randomUUID } from 'node:crypto';
import type { TaskKind } from '@rootclock/domain';
import { sent, type TestNursery } from '../../support/nursery.ts';
import { stockOf } from '../../support/stock.ts';
import { protocolOf, stage } from '../protocols/protocols.ts';

const act = { shortDays: 0, usualDays: 0, longDays: 0, share: 1 };
export const WHOLE_COURSE = [
  stage('stratification', { shortDays: 30, usualDays: 30, longDays: 45, share: 1 }),
  stage('sowing', act),
  stage('emergence', { shortDays: 7, usualDays: 14, longDays: 28 }),
  stage('pricking-out', { shortDays: 10, usualDays: 20, longDays: 30 }),
  stage('growing-on', { shortDays: 30, usualDays: 40, longDays: 60 }),
  stage('hardening', { shortDays: 5, usualDays: 7, longDays: 14 }),
  stage('root-check', { ...act, longDays: 7 }),
  stage('ready', act),
];

/** A plant with a protocol through all stages, places and pots, and short ways to start, look and tick. */
export async function taskStory(nursery: TestNursery) {
  const stock = stockOf(nursery);
  const { plantId, versionId } = await protocolOf(nursery, { stages: WHOLE_COURSE });
  const sourceId = await stock.addSource(plantId);
  const trayId = await stock.addContainer({ code: 'plug', kind: 'tray', volumeMl: 60, depthMm: 100, cells: 72 });
  const potId = await stock.addContainer({ code: 'pot' });
  const benchId = await stock.addPlace({ code: 'B2' });
  const { propagation } = nursery.as('grower');

  async function start({
    on = nursery.clock.now().toISOString().slice(0, 10),
    stagePosition = 0,
    protocolVersionId = versionId as string | null,
  } = {}) {
    const batchId = randomUUID();
    const { code } = await propagation.startBatch(
      sent({
        batchId,
        plantId,
        sourceId,
        method: 'seed' as const,
        unit: 'cell' as const,
        containerId: trayId,
        units: 72,
        placeId: benchId,
        happenedOn: on,
        targetContainerId: potId,
        ...(protocolVersionId ? { protocolVersionId, stagePosition } : {}),
      }),
    );
    return { batchId, code };
  }
  const count = (batchId: string, emergedUnits: number, happenedOn: string) =>
    propagation.countBatch(sent({ batchId, emergedUnits, countKind: 'counted' as const, happenedOn }));
  async function pot(batchId: string, happenedOn: string, units = 40) {
    const lotId = randomUUID();
    const { entryId } = await propagation.potBatch(
      sent({
        batchId,
        happenedOn,
        lots: [{ lotId, containerId: potId, placeId: benchId, unitsOut: units, pottedUnits: units }],
      }),
    );
    return { lotId, entryId };
  }

  const list = (more: { from?: string; until?: string; kinds?: TaskKind[]; placeId?: string } = {}) =>
    nursery.as('viewer').planning.listTasks({ from: today(), until: '2028-01-31', ...more });
  /** `kind day` of what is open, in order. */
  const told = async (...kinds: TaskKind[]) =>
    (await list({ kinds })).rows.filter(({ doneOn }) => doneOn === null).map(({ kind, dueOn }) => `${kind} ${dueOn}`);
  const today = () => nursery.clock.now().toISOString().slice(0, 10);
  const takeBack = (entryId: string) => nursery.as('grower').stock.reverseEntry(sent({ entryId }));
  const tick = (key: string, doneOn = today(), role: 'crew' | 'viewer' | 'owner' = 'crew') =>
    nursery.as(role).planning.tickTask(sent({ key, doneOn }));
  const setDays = (placeId: string, days: { cover?: string; bait?: string; uncover?: string }) =>
    nursery.sql('UPDATE place SET cover_md = $3, bait_md = $4, uncover_md = $5 WHERE nursery_id = $1 AND id = $2', [
      nursery.nurseryId,
      placeId,
      days.cover,
      days.bait,
      days.uncover,
    ]);

  return {
    stock,
    plantId,
    versionId,
    sourceId,
    trayId,
    potId,
    benchId,
    propagation,
    start,
    count,
    pot,
    list,
    told,
    today,
    takeBack,
    tick,
    setDays,
  };
}
