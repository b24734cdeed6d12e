// A large plan: many plants, each wanted in several weeks of a year, in a nursery whose benches do not hold all of it.
import {
  addDays,
  learnStages,
  mondayOf,
  type PlanContainer,
  type PlanDemand,
  type PlanFacts,
  type PlanProtocol,
  type PlanSupply,
  type StagePlan,
  type StandingUnits,
  weekStart,
} from '@rootclock/domain';
import type { Chance } from '@rootclock/server/demo/random';
import { streamOf } from '../chance.ts';

export interface PlanSize {
  plants: number;
  weeks: number;
  seed: number;
  /** Of what the plan would cover in its fullest week. */
  capacityCm2: number | null;
}

const TODAY = '2026-11-20';
const TRAYS: PlanContainer[] = [50, 72, 128].map((cells) => ({
  id: `tray-${cells}`,
  kind: 'tray',
  volumeMl: 4000 / cells,
  footprintMm2: 280 * 540,
  cells,
}));
const POTS: PlanContainer[] = [90, 110, 130].map((mm) => ({
  id: `pot-${mm}`,
  kind: 'pot',
  volumeMl: mm * 8,
  footprintMm2: mm * mm,
  cells: null,
}));

function protocolOf(chance: Chance, plantId: string, at: number): PlanProtocol {
  const spread = (usual: number) => ({
    shortDays: Math.round(usual * 0.7),
    usualDays: usual,
    longDays: Math.round(usual * 1.5),
  });
  const share = () => 0.5 + chance.whole(0, 45) / 100;
  const stages: StagePlan[] = [
    { kind: 'stratification', ...spread(chance.whole(0, 60)), share: 1, season: null, rests: false },
    { kind: 'sowing', ...spread(0), share: 1, season: { fromMd: '01-15', toMd: '09-15' }, rests: false },
    { kind: 'emergence', ...spread(chance.whole(7, 25)), share: share(), season: null, rests: false },
    {
      kind: 'growing-on',
      ...spread(chance.whole(40, 80)),
      share: 0.85 + chance.whole(0, 10) / 100,
      season: null,
      rests: false,
    },
    { kind: 'hardening', ...spread(10), share: 0.98, season: null, rests: false },
  ];
  const evidence = [{ stage: 'emergence' as const, tried: 200, passed: Math.round(200 * share()), batches: 2 }];
  return {
    versionId: `V${at}`,
    protocolId: `R${at}`,
    plantId,
    method: 'seed',
    label: '',
    startUnit: 'cell',
    startContainerId: chance.pick(TRAYS).id,
    targetContainerId: chance.pick(POTS).id,
    sowingContainerId: null,
    seedsPerCell: 2,
    plan: { stages, dormantMonths: [11, 12, 1, 2] },
    passing: learnStages({ startUnit: 'cell', seedsPerCell: 2, stages }, evidence, {
      priorWeight: 20,
      evidenceLimit: 400,
      confidence: 0.9,
    }).map(({ stage, covers, share: mean, tried, batches, alpha, beta }) => ({
      stage,
      covers,
      share: mean,
      tried,
      batches,
      shapes: { alpha, beta },
    })),
  };
}

/** Facts that are the same for the same seed. */
export function planFacts({ plants, weeks, seed, capacityCm2 }: PlanSize): PlanFacts {
  const chance = streamOf(seed, 'plan');
  const firstOn = weekStart(TODAY);
  const ids = Array.from({ length: plants }, (_, at) => `P${String(at).padStart(4, '0')}`);
  const protocols = ids.map((id, at) => protocolOf(chance, id, at));
  const demands: PlanDemand[] = ids.flatMap((plantId, at) =>
    Array.from({ length: chance.whole(1, 4) }, (_, nth): PlanDemand => {
      const containerId = protocols[at]?.targetContainerId ?? '';
      const isOrder = chance.whole(0, 2) === 0;
      return {
        id: `D${at}-${nth}`,
        kind: isOrder ? 'installation' : 'expected',
        rank: isOrder ? at * 10 + nth : null,
        on: addDays(mondayOf(firstOn, chance.whole(14, weeks - 1)), chance.whole(0, 6)),
        units: chance.whole(20, 200),
        plantId,
        containerId,
        accepts: [{ item: `${plantId}@${containerId}`, penalty: 0 }],
        refuses: [],
        held: [],
        unitValue: isOrder ? null : chance.whole(300, 1500),
        seedZone: null,
        wildType: false,
      };
    }),
  );
  const wearing = { lossRatePerDay: 0.0004, winterSurvival: 0.9, winter: { fromMd: '11-15', toMd: '04-14' } };
  const supplies: PlanSupply[] = ids.map((plantId, at) => ({
    id: `L${at}`,
    item: `${plantId}@${protocols[at]?.targetContainerId}`,
    units: chance.whole(0, 60),
    readyOn: TODAY,
    plantByOn: addDays(TODAY, chance.whole(60, 400)),
    countedOn: TODAY,
    ...wearing,
  }));
  const standing: StandingUnits[] = supplies.map((supply, at) => ({
    id: supply.id,
    now: null,
    potted: { containerId: protocols[at]?.targetContainerId ?? '', plants: supply.units, fromOn: TODAY },
    plantByOn: supply.plantByOn,
  }));
  return {
    today: TODAY,
    confidence: 0.9,
    demands,
    supplies,
    protocols,
    sources: ids.map((plantId) => ({
      id: `S-${plantId}`,
      code: `S-${plantId}`,
      plantId,
      kind: 'seed-collection',
      seedZone: null,
      origin: 'wild',
      gatheredOn: '2026-09-01',
      gramsLeft: 50,
      purity: 0.9,
      seedsPerGram: 400,
      germination: null,
      sowFresh: false,
    })),
    plants: ids.map((id) => ({
      id,
      genus: 'Genus',
      rootHabit: 'fibrous',
      dormantMonths: [11, 12, 1, 2],
      isCultivar: false,
    })),
    containers: [...TRAYS, ...POTS],
    seasons: {
      rules: [{ id: 'rule', basis: 'confined', span: 'P1Y', reach: { rootHabit: 'fibrous' } }],
      windows: [
        { id: 'W1', opensMd: '04-15', closesMd: '06-15' },
        { id: 'W2', opensMd: '09-01', closesMd: '10-15' },
      ],
      freezeMd: '11-15',
    },
    space: { capacityCm2, standing },
    neutralValue: 100,
  };
}
