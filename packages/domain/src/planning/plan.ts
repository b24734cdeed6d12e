import { type CalendarDate, requireDate } from '../kernel/dates.ts';
import { InputError, requireShare } from '../kernel/input.ts';
import { addSpan } from '../kernel/spans.ts';
import { compareText } from '../kernel/text.ts';
import type { PlanGap, PlanLine, ProductionPlan } from './answer.ts';
import type { PlanDemand, PlanSupply } from './demand-facts.ts';
import { lineOf } from './line.ts';
import { serveDemands } from './missing.ts';
import { fitToSpace } from './space/fit.ts';
import type { SolveProgramme } from './space/programme.ts';
import { standingArea, type StandingUnits } from './space/standing.ts';
import { chooseStart, type Choice, isUnmet, type UnmetReason } from './start/choice.ts';
import { draftStarts, type StartDraft, type WantedFor } from './start/draft.ts';
import type { PlanContainer, PlanPlant, PlanProtocol, PlanSeasons, PlanSource } from './start/facts.ts';
import { gramsFor } from './start/size.ts';
import { type SeedAnswer, SeedLeft, type Sourced, takeSeed } from './start/take-seed.ts';
import { mondayOf, weekStart } from './weeks.ts';

export interface PlanFacts {
  today: CalendarDate;
  /** Of each batch giving what it is to give, 0.5 to 0.999. */
  confidence: number;
  demands: readonly PlanDemand[];
  supplies: readonly PlanSupply[];
  protocols: readonly PlanProtocol[];
  sources: readonly PlanSource[];
  plants: readonly PlanPlant[];
  containers: readonly PlanContainer[];
  seasons: PlanSeasons;
  space: {
    /** Bench area in square centimetres; null where nobody measured any. */
    capacityCm2: number | null;
    standing: readonly StandingUnits[];
  };
  /** What a plant counts as where nobody said what it is worth, in the currency's smallest unit. */
  neutralValue: number;
}

const gap = (
  { demand, units }: WantedFor,
  reason: UnmetReason,
  more: Partial<Pick<PlanGap, 'fullWeeks' | 'grams'>> = {},
): PlanGap => ({
  demandId: demand.id,
  kind: demand.kind,
  plantId: demand.plantId,
  containerId: demand.containerId,
  on: demand.on,
  units,
  unitValue: demand.unitValue,
  reason,
  fullWeeks: [],
  grams: null,
  ...more,
});

/** Nothing is started for what is wanted later than this: no plant takes so long, and the weeks until then are all gone through. */
const PLANNED_AHEAD = 'P10Y';

/** What a demand wants beyond what is held for it already. */
const unheld = ({ units, held }: PlanDemand) => Math.max(0, units - held.reduce((sum, each) => sum + each.units, 0));

function seedGap(wanted: WantedFor, draft: StartDraft, { sources }: PlanFacts, { sourced, full }: SeedAnswer): PlanGap {
  const source =
    sourced?.source ?? sources.find(({ plantId, gramsLeft }) => plantId === draft.plant.id && gramsLeft !== null);
  const needed = source ? gramsFor(full.seeds, source) : null;
  return gap(wanted, 'not-enough-seed', { grams: needed === null ? null : { needed, left: sourced?.gramsLeft ?? 0 } });
}

/** What of a batch is served when it gives fewer plants than are wanted, in the order of worth. */
function servedOf(
  { wanted }: StartDraft,
  plants: number,
): { demand: PlanDemand; units: number; servedUnits: number }[] {
  let left = plants;
  return wanted.map(({ demand, units }) => {
    const servedUnits = Math.min(left, units);
    left -= servedUnits;
    return { demand, units, servedUnits };
  });
}

const byDay = (a: PlanLine, b: PlanLine) => compareText(a.startOn, b.startOn) || compareText(a.key, b.key);

/**
 * What to start, so that what is missing is there on its day. What each demand lacks beside stock and batches on the way becomes batches: the
 * fewest units, in whole trays, that give it at the confidence (exact binomial or beta-binomial of the learned shares), from a source that fits and has
 * the seed, by the last day that leads to a timely end within each stage's season. Where bench area runs out, the sizes that serve most: first orders,
 * then value (see fitToSpace). What is wanted more than ten years ahead is left out. What cannot be met says why. The order of the facts does not matter; days are calendar dates, areas square centimetres.
 * Throws InputError for a confidence outside 0.5 to 0.999 and for facts that cannot be.
 */
export async function productionPlan(facts: PlanFacts, solve: SolveProgramme): Promise<ProductionPlan> {
  const { today, confidence, space } = facts;
  requireDate('today', today);
  if (requireShare('confidence', confidence) < 0.5 || confidence > 0.999)
    throw new InputError('confidence', 'must lie from 0.5 to 0.999', { least: 0.5, most: 0.999 });
  const firstOn = weekStart(today);
  const choosing = {
    ...facts,
    plants: new Map(facts.plants.map((plant) => [plant.id, plant])),
    containers: new Map(facts.containers.map((container) => [container.id, container])),
  };
  const lastOn = addSpan(today, PLANNED_AHEAD);
  const near = facts.demands.filter(({ on }) => on <= lastOn);
  const far = facts.demands
    .filter(({ on }) => on > lastOn)
    .map((demand) => ({ demand, units: unheld(demand) }))
    .filter(({ units }) => units > 0);
  const { given, short: missing } = serveDemands(near, facts.supplies);
  const answers = missing.map((shortage) => chooseStart(shortage, choosing));
  const gaps: PlanGap[] = [
    ...answers.filter(isUnmet).map(({ shortage, reason }) => gap(shortage, reason)),
    ...far.map((wanted) => gap(wanted, 'too-far-ahead')),
  ];
  const drafts = draftStarts(
    answers.filter((answer): answer is Choice => !isUnmet(answer)),
    facts,
  );

  const left = new SeedLeft(facts.sources);
  const sourcedOf = (wanted: readonly StartDraft[]): Sourced[] =>
    wanted.flatMap((draft) => {
      const answer = takeSeed(draft, facts.sources, left, confidence);
      gaps.push(...answer.short.map((wantedFor) => seedGap(wantedFor, draft, facts, answer)));
      return answer.sourced ? [answer.sourced] : [];
    });
  const timely = sourcedOf(drafts.filter(({ timing }) => timing.state !== 'too-late'));
  const late = sourcedOf(drafts.filter(({ timing }) => timing.state === 'too-late'));

  const standingCm2 = standingArea(space.standing, given, choosing.containers, today);
  const fitted = await fitToSpace(
    timely.map(({ draft, size }) => ({ draft, full: size })),
    { capacityCm2: space.capacityCm2, standingCm2 },
    { confidence, neutralValue: facts.neutralValue, firstOn },
    solve,
  );
  const lines = fitted.starts.flatMap(({ draft, size, fullWeeks }, at) => {
    const served = servedOf(draft, size?.plants ?? 0);
    gaps.push(
      ...served
        .filter(({ units, servedUnits }) => servedUnits < units)
        .map(({ demand, units, servedUnits }) =>
          gap({ demand, units: units - servedUnits }, 'no-space', {
            fullWeeks: fullWeeks.map((week) => mondayOf(firstOn, week)),
          }),
        ),
    );
    const sourced = timely[at];
    return size && sourced ? [lineOf({ draft, size, sourced, served, firstOn })] : [];
  });
  const tooLate = late.map((sourced) => {
    const { draft, size } = sourced;
    return lineOf({ draft, size, sourced, served: servedOf(draft, size.plants), firstOn });
  });
  return {
    lines: lines.sort(byDay),
    tooLate: tooLate.sort(byDay),
    gaps: gaps.sort(
      (a, b) => compareText(a.on, b.on) || compareText(a.demandId, b.demandId) || compareText(a.reason, b.reason),
    ),
    weeks: standingCm2.map((cm2, week) => ({
      startsOn: mondayOf(firstOn, week),
      standingCm2: cm2,
      plannedCm2: fitted.plannedCm2[week] ?? 0,
    })),
    capacityCm2: space.capacityCm2,
    missingUnits: [...missing, ...far].reduce((sum, { units }) => sum + units, 0),
    servedUnits: lines.reduce((sum, { plants }) => sum + plants, 0),
    within: fitted.within,
  };
}
