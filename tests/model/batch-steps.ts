// Batches in packs, cells drawn from them, and the stages of both.
import { at, type Ledger } from './ledger.ts';
import { stageOf } from './stages.ts';
import { chosen, type Planner } from './step.ts';
import { TODAY } from './world.ts';

export const PACKS_BEGAN = '2026-05-10';
/** The first lies before any batch began. */
export const STAGE_DAYS = ['2026-05-09', PACKS_BEGAN, '2026-05-13', '2026-05-16', TODAY];

const STRATIFICATION = 0;
const SOWING = 1;

const packsOf = (ledger: Ledger) => [...ledger.batches.values()].filter(({ unit }) => unit === 'pack');

/** A batch is over when nothing of it stands. */
const isOver = (ledger: Ledger, batchId: string) => ledger.standing(batchId).length === 0;

export const startPacks: Planner<{ place: number; units: number }> = (ledger, { place, units }) => {
  const batchId = ledger.id('batch');
  const placeId = chosen(ledger.placeIds, place) ?? '';
  return {
    refusals: [],
    send: ({ procedures, sent, plantId, sourceId, versionId }, commandId) =>
      procedures.propagation.startBatch(
        sent(
          {
            batchId,
            plantId,
            sourceId,
            method: 'seed' as const,
            protocolVersionId: versionId,
            unit: 'pack' as const,
            containerId: null,
            units,
            placeId,
            happenedOn: PACKS_BEGAN,
          },
          commandId,
        ),
      ),
    apply: (model, id) => {
      model.batches.set(batchId, { id: batchId, unit: 'pack', begunOn: PACKS_BEGAN });
      model.post({
        id,
        kind: 'start',
        moves: [{ from: null, to: at(batchId, placeId), units }],
        stages: [{ batchId, what: 'started', position: STRATIFICATION, on: PACKS_BEGAN }],
      });
    },
    concerns: [],
  };
};

export const drawPacks: Planner<{ batch: number; packs: number; units: number; to: number }> = (
  ledger,
  { batch, packs: taken, units, to },
) => {
  const packs = chosen(packsOf(ledger), batch);
  if (!packs) return null;
  const batchId = ledger.id('batch');
  const fromPlaceId = ledger.standing(packs.id)[0] ?? ledger.placeIds[0] ?? '';
  const placeId = chosen(ledger.placeIds, to) ?? '';
  return {
    refusals: isOver(ledger, packs.id)
      ? ['batch-closed']
      : taken > ledger.of(at(packs.id, fromPlaceId))
        ? ['not-enough-units']
        : [],
    send: ({ procedures, sent, plantId, sourceId, versionId, containerIds }, commandId) =>
      procedures.propagation.startBatch(
        sent(
          {
            batchId,
            plantId,
            sourceId,
            method: 'seed' as const,
            protocolVersionId: versionId,
            unit: 'cell' as const,
            containerId: containerIds.small,
            units,
            placeId,
            happenedOn: TODAY,
            fromPacks: { batchId: packs.id, units: taken, placeId: fromPlaceId },
          },
          commandId,
        ),
      ),
    apply: (model, id) => {
      model.batches.set(batchId, { id: batchId, unit: 'cell', begunOn: TODAY });
      model.post({
        id,
        kind: 'convert',
        moves: [{ from: at(packs.id, fromPlaceId), to: at(batchId, placeId), units: taken, toUnits: units }],
        stages: [{ batchId, what: 'started', position: SOWING, on: TODAY }],
      });
    },
    concerns: [],
  };
};

export const beginStage: Planner<{ batch: number; position: number; day: number }> = (
  ledger,
  { batch: number, position, day },
) => {
  const batch = chosen([...ledger.batches.values()], number);
  const on = chosen(STAGE_DAYS, day) ?? TODAY;
  if (!batch) return null;
  const { begun } = stageOf(ledger, batch.id);
  return {
    refusals: [
      ...(on < batch.begunOn ? ['day-too-early'] : []),
      ...(isOver(ledger, batch.id) ? ['batch-closed'] : []),
      ...(begun.some((stage) => stage.position < position && stage.on > on) ? ['stage-before-earlier'] : []),
      ...(begun.some((stage) => stage.position > position && stage.on < on && stage.isSaid)
        ? ['stage-after-later']
        : []),
    ],
    send: ({ procedures, sent }, commandId) =>
      procedures.propagation.beginBatchStage(sent({ batchId: batch.id, position, happenedOn: on }, commandId)),
    apply: (model, id) =>
      model.post({ id, kind: 'observe', moves: [], stages: [{ batchId: batch.id, what: 'said', position, on }] }),
    concerns: [],
  };
};

/** Counts of packs book no units: what they show moves the stage alone. */
export const countPacks: Planner<{ batch: number; alive: number; day: number }> = (
  ledger,
  { batch: number, alive, day },
) => {
  const packs = chosen(packsOf(ledger), number);
  const on = chosen(STAGE_DAYS.slice(1), day) ?? TODAY;
  if (!packs || isOver(ledger, packs.id)) return null;
  return {
    refusals: [],
    send: ({ procedures, sent }, commandId) =>
      procedures.propagation.countBatch(
        sent({ batchId: packs.id, emergedUnits: alive, countKind: 'counted' as const, happenedOn: on }, commandId),
      ),
    apply: (model, id) =>
      model.post({
        id,
        kind: 'count',
        moves: [],
        stages: alive > 0 ? [{ batchId: packs.id, what: 'alive', position: null, on }] : [],
      }),
    concerns: [],
  };
};
