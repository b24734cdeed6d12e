/** What the record and the settings make of each stage, as screens show it. */
import {
  betaQuantile,
  type BatchUnit,
  LEARNING_CONFIDENCE,
  learnStages,
  passShare,
  productOfShares,
  type Shapes,
  type StageKind,
  type Standing,
} from '@rootclock/domain';
import type { RecordedShares, Settings } from './record-data.ts';

export interface ShownStage {
  stage: StageKind;
  /** Further stages whose losses are counted with it. */
  covers: StageKind[];
  /** What is believed to pass; of counts without a protocol their own share. */
  share: number;
  low: number;
  high: number;
  tried: number;
  passed: number;
  batches: number;
  /** Plants counted beyond those that were tried. */
  over: number;
  /** What was counted. */
  what: 'seeds' | 'plants' | BatchUnit;
  prior: { share: number; standing: Standing; source: string | null } | null;
}

export type Weighing = Pick<Settings, 'priorWeight' | 'evidenceLimit'>;

const UP: readonly StageKind[] = ['emergence', 'rooting'];
const NOTHING = { ofSeeds: false, over: 0 };

const whatOf = (stage: StageKind, ofSeeds: boolean, startUnit: BatchUnit | undefined): ShownStage['what'] => {
  if (!UP.includes(stage)) return 'plants';
  if (ofSeeds) return 'seeds';
  return startUnit === 'piece' || stage === 'rooting' ? 'piece' : 'cell';
};

/** The stages of a protocol in their order, or without one the stages that were counted. */
export function shownStages(
  { protocol, evidence }: RecordedShares,
  { priorWeight, evidenceLimit }: Weighing,
): ShownStage[] {
  if (!protocol) {
    return evidence.map(({ stage, tried, passed, batches, ofSeeds, over }) => {
      const { share, low, high } = passShare({ passed, tried, confidence: LEARNING_CONFIDENCE });
      return {
        stage,
        covers: [],
        share: share ?? 0,
        low,
        high,
        tried,
        passed,
        batches,
        over,
        what: whatOf(stage, ofSeeds, undefined),
        prior: null,
      };
    });
  }
  return learnStages(protocol, evidence, { priorWeight, evidenceLimit, confidence: LEARNING_CONFIDENCE }).map(
    ({ stage, covers, share, low, high, tried, passed, batches, priorShare }) => {
      const figure = protocol.stages.find(({ kind }) => kind === covers[0]);
      const { ofSeeds, over } = evidence.find((row) => row.stage === stage) ?? NOTHING;
      return {
        stage,
        covers: covers.slice(1),
        share,
        low,
        high,
        tried,
        passed,
        batches,
        over,
        what: whatOf(stage, ofSeeds, protocol.startUnit),
        prior: figure ? { share: priorShare, standing: figure.standing, source: figure.source } : null,
      };
    },
  );
}

/** The share that gets through all stages, as a distribution; null where no protocol says which stages there are. */
export function shapesInAll(
  { protocol, evidence }: RecordedShares,
  { priorWeight, evidenceLimit }: Weighing,
): Shapes | null {
  return (
    protocol &&
    productOfShares(learnStages(protocol, evidence, { priorWeight, evidenceLimit, confidence: LEARNING_CONFIDENCE }))
  );
}

/** Its mean, and the range that holds it eight times in ten. */
export function shareInAll(shapes: Shapes): { share: number; low: number; high: number } {
  return {
    share: shapes.alpha / (shapes.alpha + shapes.beta),
    low: betaQuantile({ share: 0.1, ...shapes }),
    high: betaQuantile({ share: 0.9, ...shapes }),
  };
}

export const isComingUp = (stage: StageKind): boolean => UP.includes(stage);
/** A stage that everything passes tells nothing, unless somebody counted. */
export const tells = ({ prior, tried }: ShownStage): boolean => tried > 0 || (prior !== null && prior.share < 1);
