import { requireWhole } from '../../kernel/input.ts';
import { type Pace, type ProtocolPlan, requireProtocolPlan, daysOf, type StageKind, type StagePlan } from './stages.ts';

/** How growers divide the time from seed to sale: what is done before sowing, getting plants up, growing them, and making them hold outdoors. */
export const GROWTH_PHASES = ['treatment', 'establishment', 'active-growth', 'hardening'] as const;
export type GrowthPhase = (typeof GROWTH_PHASES)[number];

const PHASE_OF: Record<StageKind, GrowthPhase> = {
  scarification: 'treatment',
  stratification: 'treatment',
  sowing: 'establishment',
  sticking: 'establishment',
  emergence: 'establishment',
  rooting: 'establishment',
  'pricking-out': 'establishment',
  'growing-on': 'active-growth',
  hardening: 'hardening',
  'root-check': 'hardening',
  ready: 'hardening',
};

export type PaceDays = Record<Pace, number>;

const sumOf = (stages: readonly StagePlan[]): PaceDays => {
  const sum = (pace: Pace) => stages.reduce((days, stage) => days + daysOf(stage, pace), 0);
  return { short: sum('short'), usual: sum('usual'), long: sum('long') };
};

/**
 * Days of each phase and in all, at each pace: the sums of their stages, without the days on which a stage waits for its season or rests.
 * Throws InputError for a plan that is none.
 */
export function phaseDays(plan: ProtocolPlan): Record<GrowthPhase | 'total', PaceDays> {
  const { stages } = requireProtocolPlan(plan);
  const ofPhase = (phase: GrowthPhase) => sumOf(stages.filter((stage) => PHASE_OF[stage.kind] === phase));
  return {
    treatment: ofPhase('treatment'),
    establishment: ofPhase('establishment'),
    'active-growth': ofPhase('active-growth'),
    hardening: ofPhase('hardening'),
    total: sumOf(stages),
  };
}

/** Whether some stage waits for a season or rests in winter, so that more days pass than those of the stages. */
export const mayWait = ({ stages, dormantMonths }: ProtocolPlan): boolean =>
  stages.some((stage) => stage.season !== null || (stage.rests && dormantMonths.length > 0));

/**
 * The share of a stage when `seedsPerCell` seeds lie in each cell: of seeds coming up, that of cells with at least one, 1 − (1 − g)ⁿ; every other
 * share is one of units already. Throws InputError for seeds that are no whole number from 1 to 200.
 */
export function unitShareOf(stage: Pick<StagePlan, 'kind' | 'share'>, seedsPerCell: number | null): number {
  const seeds = requireWhole('seedsPerCell', seedsPerCell ?? 1, 1, 200);
  return stage.kind === 'emergence' && seeds > 1 ? 1 - (1 - stage.share) ** seeds : stage.share;
}

/**
 * The share of what is started that gets ready, 0 to 1: the product of the stages' shares. Without `seedsPerCell` it is the share of seeds (or
 * pieces); with it the share of cells sown with that many seeds. Throws InputError for a plan that is none.
 */
export function shareReady(plan: ProtocolPlan, seedsPerCell: number | null = null): number {
  return requireProtocolPlan(plan).stages.reduce((share, stage) => share * unitShareOf(stage, seedsPerCell), 1);
}
