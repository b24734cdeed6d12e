import { propagation } from '@rootclock/contracts';
import {
  type BatchNow,
  type BatchUnit,
  countsOf,
  EVERYONE,
  expectedAlive,
  isUnitOnePlant,
  latestOf,
  leftSince,
  type LearnedStage,
  learnStages,
  readyFrom,
  type StageBeginning,
  stageBeginnings,
  type StageProgress,
  stageProgress,
  yieldAhead,
} from '@rootclock/domain';
import { refuse } from '../../../../refusal.ts';
import { query, type ReadContext } from '../../../../trpc/operation.ts';
import { loadEvidence } from '../../learning/evidence.ts';
import { loadProtocolVersion, planOf, type ProtocolVersion } from '../../protocols/store.ts';
import { loadBatchEntries } from '../history/store.ts';
import { standingUnits } from '../open.ts';
import { loadBatch } from '../store.ts';
import { potLifeAhead, type PotLifeAhead } from './pot-life-ahead.ts';
import { readForecastSettings, readStartedUnits } from './reads.ts';

/** What learning now suggests of a yield. It is offered and never written: a stored forecast changes only by entries on its batch. */
export interface ForecastSuggestion {
  /** Null where nothing is known to reckon from: trays or packs without seeds or a count, or a batch without a protocol. */
  yield: { cautiousUnits: number; usualUnits: number; tried: number; from: 'units' | 'seeds' | 'count' } | null;
  /** The days by the usual and by the long durations; null without a protocol. */
  readyOn: string | null;
  readyLateOn: string | null;
  /** The confidence the cautious number is held at. */
  confidence: number;
  /** Each stage ahead with what is believed of it, and what that rests on; all of them where the yield is not known. */
  stages: LearnedStage[];
  /** Batches that the best-known stage ahead rests on. */
  batches: number;
  /** Of a start that is only thought of: by when its plants would have to leave their pots. */
  potLife: PotLifeAhead | null;
}

export const suggestForecast = query({
  name: 'suggestForecast',
  isHeavy: true,
  input: propagation.suggestForecast,
  roles: EVERYONE,
  read: async (context, input): Promise<ForecastSuggestion> =>
    input.batchId ? ofBatch(context, input.batchId) : ofPlan(context, input),
});

async function ofBatch(context: ReadContext, batchId: string): Promise<ForecastSuggestion> {
  const batch = await loadBatch(context, batchId);
  if (!batch.protocolVersionId || batch.closedOn !== null) return nothing(context);
  const version = await loadProtocolVersion(context, batch.protocolVersionId);
  const entries = await loadBatchEntries(context, batchId);
  const standing = standingUnits(batch);
  const last = countsOf(entries).at(-1);
  const aliveUnits = last
    ? expectedAlive({
        unit: batch.unit,
        lastCounted: last.emergedUnits,
        since: leftSince(entries, last.version, context.today),
        standingUnits: standing,
      })
    : null;
  const now: BatchNow = {
    unit: batch.unit,
    standingUnits: standing,
    aliveUnits,
    ...(await readStartedUnits(context, batchId)),
    pottedPlants: entries.reduce((plants, entry) => plants + entry.pottedPlants, 0),
  };
  return (
    await suggest(context, version, now, {
      startedOn: batch.startedOn,
      today: context.today,
      begun: stageBeginnings(planOf(version), entries),
      secondWinterOn: batch.secondWinterOn,
    })
  ).suggestion;
}

interface PlannedStart {
  protocolVersionId?: string | null | undefined;
  unit?: BatchUnit | null | undefined;
  units?: number | null | undefined;
  seedsSown?: number | null | undefined;
  startedOn?: string | null | undefined;
  stagePosition?: number | null | undefined;
  containerId?: string | null | undefined;
  targetContainerId?: string | null | undefined;
}

async function ofPlan(context: ReadContext, input: PlannedStart): Promise<ForecastSuggestion> {
  const version = await loadProtocolVersion(context, input.protocolVersionId ?? '');
  const startedOn = input.startedOn ?? context.today;
  const stagePosition = input.stagePosition ?? 0;
  if (stagePosition >= version.stages.length)
    refuse(
      'stage-not-in-protocol',
      { position: stagePosition, stages: version.stages.map(({ kind }) => kind) },
      'stagePosition',
    );
  const units = input.units ?? 0;
  const now: BatchNow = {
    unit: input.unit ?? version.startUnit,
    startedUnits: units,
    standingUnits: units,
    seedsSown: input.seedsSown ?? null,
    aliveUnits: null,
    pottedPlants: 0,
  };
  const begun = stageBeginnings(planOf(version), [
    {
      version: 1,
      starts: true,
      kind: 'start',
      happenedOn: startedOn,
      stagePosition,
      emergedUnits: null,
      pottedPlants: 0,
    },
  ]);
  const { suggestion, progress } = await suggest(context, version, now, {
    startedOn,
    today: latestOf(startedOn, context.today),
    begun,
    secondWinterOn: null,
  });
  const potLife = await potLifeAhead(context, {
    plantId: version.plantId,
    method: version.method,
    unit: now.unit,
    startedOn,
    readyOn: suggestion.readyOn,
    progress,
    startContainerId: input.containerId ?? version.startContainerId,
    targetContainerId: input.targetContainerId ?? version.targetContainerId,
  });
  return { ...suggestion, potLife };
}

async function suggest(
  context: ReadContext,
  version: ProtocolVersion,
  now: BatchNow,
  {
    startedOn,
    today,
    begun,
    secondWinterOn,
  }: { startedOn: string; today: string; begun: StageBeginning[]; secondWinterOn: string | null },
): Promise<{ suggestion: ForecastSuggestion; progress: StageProgress[] }> {
  const { planConfidence, ...settings } = await readForecastSettings(context);
  const learned = await learnedFor(context, version, now.unit, settings);
  const plan = planOf(version);
  const progress = stageProgress(plan, startedOn, begun, today, secondWinterOn);
  const found = yieldAhead(now, learned, progress, today, planConfidence);
  const stages = found?.ahead ?? learned;
  const suggestion: ForecastSuggestion = {
    yield: found && {
      cautiousUnits: found.cautiousUnits,
      usualUnits: found.usualUnits,
      tried: found.tried,
      from: found.from,
    },
    readyOn: readyFrom(plan, progress, today, 'usual', secondWinterOn),
    readyLateOn: readyFrom(plan, progress, today, 'long', secondWinterOn),
    confidence: planConfidence,
    stages,
    batches: Math.max(0, ...stages.map(({ batches }) => batches)),
    potLife: null,
  };
  return { suggestion, progress };
}

/** The interval shown beside each share; the cautious number is held at the nursery's own confidence. */
const SHOWN_CONFIDENCE = 0.95;

/** Shares of seeds say nothing of cells, nor the other way round: only evidence counted as this batch is speaks. */
async function learnedFor(
  context: ReadContext,
  version: ProtocolVersion,
  unit: BatchUnit,
  settings: { priorWeight: number; evidenceLimit: number },
): Promise<LearnedStage[]> {
  const evidence = (await loadEvidence(context, [version.plantId])).filter(
    ({ method, label, stage, ofSeeds }) =>
      method === version.method &&
      label === version.label &&
      ((stage !== 'emergence' && stage !== 'rooting') || ofSeeds === !isUnitOnePlant(unit)),
  );
  return learnStages({ startUnit: unit, seedsPerCell: version.seedsPerCell, stages: version.stages }, evidence, {
    ...settings,
    confidence: SHOWN_CONFIDENCE,
  });
}

async function nothing(context: ReadContext): Promise<ForecastSuggestion> {
  const { planConfidence } = await readForecastSettings(context);
  return {
    yield: null,
    readyOn: null,
    readyLateOn: null,
    confidence: planConfidence,
    stages: [],
    batches: 0,
    potLife: null,
  };
}
