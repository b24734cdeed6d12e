import type { StagePlan } from '../propagation/protocol/stages.ts';
// A nursery in miniature, from which the tests of planning begin; each says what is different in its own.
import type { PlanDemand, PlanSupply } from './demand-facts.ts';
import type { PlanFacts } from './plan.ts';
import type { SolveProgramme } from './space/programme.ts';
import type { PlanContainer, PlanPassing, PlanProtocol, PlanSource } from './start/facts.ts';

export const WINTER = { fromMd: '11-15', toMd: '03-31' };
const stage = (kind: StagePlan['kind'], days: number, share = 1, more: Partial<StagePlan> = {}): StagePlan => ({
  kind,
  shortDays: days,
  usualDays: days,
  longDays: days,
  share,
  season: null,
  rests: false,
  ...more,
});

export const known = (stages: readonly Pick<StagePlan, 'kind' | 'share'>[]): PlanPassing[] =>
  stages.map(({ kind, share }) => ({ stage: kind, covers: [kind], share, tried: 0, batches: 0, shapes: null }));

const STAGES = [
  stage('sowing', 0),
  stage('emergence', 14, 0.8),
  stage('pricking-out', 0),
  stage('growing-on', 60, 0.9),
];

/** Seed into trays of 50 cells, up after a fortnight, potted at once, ready sixty days later: 72 in 100 of what is sown. */
export const protocolOf = (more: Partial<PlanProtocol> = {}): PlanProtocol => ({
  versionId: 'V1',
  protocolId: 'R1',
  plantId: 'P1',
  method: 'seed',
  label: '',
  startUnit: 'cell',
  startContainerId: 'tray',
  targetContainerId: 'pot',
  sowingContainerId: null,
  seedsPerCell: 2,
  plan: { stages: STAGES, dormantMonths: [] },
  passing: known(STAGES),
  ...more,
});
export const withStages = (stages: StagePlan[], more: Partial<PlanProtocol> = {}): PlanProtocol =>
  protocolOf({ plan: { stages, dormantMonths: [] }, passing: known(stages), ...more });
export { stage };

/** Trays of 1,500 cm², pots of 100 cm². */
export const TRAY: PlanContainer = { id: 'tray', kind: 'tray', volumeMl: 50, footprintMm2: 150_000, cells: 50 };
export const POT: PlanContainer = { id: 'pot', kind: 'pot', volumeMl: 1000, footprintMm2: 10_000, cells: null };

export const sourceOf = (more: Partial<PlanSource> = {}): PlanSource => ({
  id: 'S1',
  code: 'S1',
  plantId: 'P1',
  kind: 'seed-collection',
  seedZone: null,
  origin: 'wild',
  gatheredOn: '2026-09-01',
  gramsLeft: 100,
  purity: 0.8,
  seedsPerGram: 250,
  germination: null,
  sowFresh: false,
  ...more,
});
export const demandOf = (more: Partial<PlanDemand> = {}): PlanDemand => {
  const { plantId = 'P1', containerId = 'pot' } = more;
  return {
    id: 'D1',
    kind: 'installation',
    rank: 1,
    on: '2027-06-01',
    units: 30,
    plantId,
    containerId,
    accepts: [{ item: `${plantId}@${containerId}`, penalty: 0 }],
    refuses: [],
    held: [],
    unitValue: null,
    seedZone: null,
    wildType: false,
    ...more,
  };
};
export const supplyOf = (more: Partial<PlanSupply> = {}): PlanSupply => ({
  id: 'L1',
  item: 'P1@pot',
  units: 40,
  readyOn: '2027-01-01',
  plantByOn: null,
  countedOn: '2027-01-15',
  lossRatePerDay: 0,
  winterSurvival: 1,
  winter: WINTER,
  ...more,
});

export const factsOf = (more: Partial<PlanFacts> = {}): PlanFacts => ({
  today: '2027-01-15',
  confidence: 0.8,
  demands: [demandOf()],
  supplies: [],
  protocols: [protocolOf()],
  sources: [sourceOf()],
  plants: [{ id: 'P1', genus: 'Asclepias', rootHabit: 'taproot', dormantMonths: [], isCultivar: false }],
  containers: [TRAY, POT],
  seasons: { rules: [], windows: [], freezeMd: '11-15' },
  space: { capacityCm2: null, standing: [] },
  neutralValue: 100,
  ...more,
});

/** For tests in which everything fits: asking it is an error. */
export const noSolver: SolveProgramme = () => Promise.reject(new Error('the solver was asked though everything fits'));

/** Tries everything: exact, and only for a handful of batches. */
export const trySolver: SolveProgramme = ({ groups, limits }) => {
  let best: { chosen: string[]; worth: number } = { chosen: [], worth: 0 };
  const walk = (at: number, chosen: string[], worth: number, left: readonly number[]): void => {
    const group = groups[at];
    if (group === undefined) {
      if (worth > best.worth) best = { chosen, worth };
      return;
    }
    walk(at + 1, chosen, worth, left);
    for (const choice of group) {
      const after = left.map((room, limit) => room - (choice.takes.find((take) => take.limit === limit)?.amount ?? 0));
      if (after.every((room) => room >= 0)) walk(at + 1, [...chosen, choice.name], worth + choice.worth, after);
    }
  };
  walk(0, [], 0, limits);
  return Promise.resolve({ chosen: best.chosen, within: 0 });
};
