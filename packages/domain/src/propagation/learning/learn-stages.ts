import type { SharePrior } from '../../statistics/pass-share.ts';
import { type StageKind, type StagePlan } from '../protocol/stages.ts';
import { unitShareOf } from '../protocol/through.ts';
import type { BatchUnit } from '../words.ts';
import { isUnitOnePlant } from '../words.ts';
import {
  learnShare,
  type LearnedShare,
  type LearningSettings,
  NOTHING_TRIED,
  type ShareEvidence,
} from './learn-share.ts';

/** Stages whose passing is counted together as growing on: what is potted until it is ready, planted or sold. */
const GROWING: readonly StageKind[] = ['growing-on', 'hardening', 'root-check'];

/** A stage, or several that are learned as one, with what is believed of the share that passes. */
export interface LearnedStage extends LearnedShare {
  /** The stage the evidence is kept under. */
  stage: StageKind;
  /** Stages of the protocol whose shares are in it. */
  covers: StageKind[];
}

/** What of a protocol decides how its shares are learned. */
export interface SharesOfProtocol {
  startUnit: BatchUnit;
  seedsPerCell: number | null;
  stages: readonly Pick<StagePlan, 'kind' | 'share'>[];
}

type StageEvidence = ShareEvidence & { stage: StageKind };

/**
 * A protocol without pricking out has no stage for plants that were lost between coming up and the pot. They are counted with growing on: for each
 * plant that was potted and whose end is known, as many had come up as it took to pot one.
 */
function withPottingLosses(
  evidence: readonly StageEvidence[],
  stages: SharesOfProtocol['stages'],
): readonly StageEvidence[] {
  const potted = evidence.find(({ stage }) => stage === 'pricking-out');
  if (!potted || potted.passed === 0 || stages.some(({ kind }) => kind === 'pricking-out')) return evidence;
  return evidence.map((row) =>
    row.stage === 'growing-on' ? { ...row, tried: Math.round((row.tried * potted.tried) / potted.passed) } : row,
  );
}

/**
 * What is believed of each stage of a protocol, from its own figures and the evidence kept by stage. Shares are those of units: of cells sown with
 * several seeds, the share of cells with at least one. Hardening and the root check are learned with growing on, since plants are lost in a pot and
 * not in a stage; their figures multiply. So are plants lost on the way into the pot where the protocol has no pricking out. The product of all is the share that gets ready. Throws InputError as learnShare does.
 */
export function learnStages(
  { startUnit, seedsPerCell, stages }: SharesOfProtocol,
  counted: readonly StageEvidence[],
  { priorWeight, ...settings }: LearningSettings & { priorWeight: number },
): LearnedStage[] {
  const evidence = withPottingLosses(counted, stages);
  const seeds = isUnitOnePlant(startUnit) ? seedsPerCell : null;
  const priors: { stage: StageKind; covers: StageKind[]; share: number }[] = [];
  for (const plan of stages) {
    const share = unitShareOf(plan, seeds);
    const grown = GROWING.includes(plan.kind) ? priors.find(({ stage }) => stage === 'growing-on') : undefined;
    if (grown) {
      grown.covers.push(plan.kind);
      grown.share *= share;
    } else priors.push({ stage: GROWING.includes(plan.kind) ? 'growing-on' : plan.kind, covers: [plan.kind], share });
  }
  return priors.map(({ stage, covers, share }) => {
    const prior: SharePrior = { share, weight: priorWeight };
    return {
      stage,
      covers,
      ...learnShare(prior, evidence.find((row) => row.stage === stage) ?? NOTHING_TRIED, settings),
    };
  });
}
