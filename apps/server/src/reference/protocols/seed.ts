import type { ReferencePlant } from '../plant-shape.ts';
import type { Particulars, ReferenceProtocol, ReferenceStage } from './shape.ts';
import { assumedStage, lastStages, printedDays, printedShare, sentence, withParticulars } from './stages.ts';
import { seedTexts } from './texts.ts';

/** Plants with deep or thick roots get deep cells and tall pots: common practice by the shape of the root. */
export const isDeepRooted = ({ facts }: ReferencePlant): boolean =>
  facts.rootHabit.value === 'taproot' || facts.rootHabit.value === 'woody';

const DAYS_A_MONTH = 30.4375;

/** By the size of the seed, which is common practice: what is finer than dust stays uncovered, the rest lies about as deep as it is thick. */
function sowing({ facts }: ReferencePlant): ReferenceStage {
  const perGram = facts.seedsPerGram.value;
  const isFine = perGram !== null && perGram > 1500;
  const depthMm = perGram === null ? null : isFine ? 0 : perGram > 300 ? 2 : 6;
  return assumedStage('sowing', [0, 0, 0], 1, {
    season: { fromMd: '02-15', toMd: '07-15' },
    light: isFine ? 'surface-light' : '',
    depthMm,
    medium: 'fine soilless mix, free draining',
    containerCode: null,
    note: 'The season is common practice: seedlings of later sowings go into winter too small. Depth by the size of the seed, common practice too.',
  });
}

function coldStage({ facts }: ReferencePlant): ReferenceStage | null {
  const { value, standing, source, note } = facts.stratificationDays;
  const cold = { temperatureLowC: 1, temperatureHighC: 5, medium: 'damp sand or vermiculite', light: 'dark' as const };
  if (value === null)
    return assumedStage('stratification', [30, 60, 90], 1, {
      ...cold,
      note: `No length was found for this plant. ${sentence(note)}`.trim(),
    });
  if (value[1] === 0) return null;
  const printed = printedDays({ value, standing, source, ...(note === undefined ? {} : { note }) });
  return { ...assumedStage('stratification', [0, 0, 0], 1, cold), ...printed };
}

function scarification({ facts }: ReferencePlant): ReferenceStage | null {
  const { value, standing, source } = facts.pretreatment;
  if (value === null) return null;
  return assumedStage('scarification', [0, 0, 1], 1, {
    note: `${sentence(value)} ${sentence(`${standing}${source === null ? '' : `: ${source}`}`)} Acid burns: only in trained hands, with goggles and gloves.`,
  });
}

function emergence({ facts }: ReferencePlant): ReferenceStage {
  const { value, standing, source, note } = facts.germinationPercent;
  const stage = assumedStage('emergence', [10, 21, 42], 0.5, {
    temperatureLowC: 18,
    temperatureHighC: 24,
    note: sentence(note),
  });
  return value === null ? stage : { ...stage, ...printedShare({ value, standing, source }) };
}

/** From a printed total where there is one, counted in months of the calendar, winters included; else assumed by the root. */
function growingOn({ facts }: ReferencePlant, others: readonly ReferenceStage[]): ReferenceStage {
  const months = facts.timeToGrowMonths;
  const slow = facts.rootHabit.value === 'tuber' || facts.rootHabit.value === 'woody';
  const days = slow
    ? ([90, 120, 180] as const)
    : facts.rootHabit.value === 'taproot'
      ? ([60, 90, 120] as const)
      : ([45, 60, 90] as const);
  const stage = assumedStage('growing-on', days, 0.9, { light: 'full-light', rests: true });
  if (months === undefined) return stage;
  const left = Math.round(months.value * DAYS_A_MONTH) - others.reduce((sum, { usualDays }) => sum + usualDays, 0);
  return {
    ...stage,
    shortDays: left,
    usualDays: left,
    longDays: left,
    rests: false,
    durationStanding: 'derived',
    durationSource: `${months.source ?? 'remembered'}: ${months.value} months from sowing, less the stages before and after`,
    note: sentence([facts.growingNote?.value, facts.secondGrowingNote?.value].filter(Boolean).join('; ')),
  };
}

/** Enough seeds that nine cells in ten hold a plant; more than five are never sown for it. */
const seedsFor = (germination: number): number =>
  Math.max(1, Math.min(5, Math.ceil(Math.log(0.1) / Math.log(1 - germination))));

/** The protocol from seed that follows from a plant's facts. */
export function seedProtocol(plant: ReferencePlant, particulars: Particulars = {}): ReferenceProtocol {
  const treated = [scarification(plant), coldStage(plant)].filter((stage) => stage !== null);
  const up = withParticulars([sowing(plant), emergence(plant)], particulars.stages);
  const [growing, ...after] = lastStages(
    growingOn(plant, [...up, ...lastStages(assumedStage('growing-on', [0, 0, 0], 1))]),
  );
  const stages = withParticulars([...treated, ...up, ...(growing ? [growing] : []), ...after], particulars.stages);
  const { standing, source } = plant.facts.propagationMethods;
  return {
    plantCode: plant.code,
    method: 'seed',
    startUnit: 'cell',
    startContainerCode: isDeepRooted(plant) ? 'plug-50-deep' : 'plug-72',
    targetContainerCode: particulars.targetContainerCode ?? (isDeepRooted(plant) ? 'tall-1l' : 'pot-1l'),
    seedsPerCell: seedsFor(stages.find(({ kind }) => kind === 'emergence')?.share ?? 0.5),
    standing,
    source,
    stages,
    texts: { ...seedTexts(plant, stages), ...particulars.texts },
  };
}
