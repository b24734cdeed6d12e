// Allocation of whole seasons, against HiGHS solving the same goals one after the other on the same instances. No database takes part.
import { allocate, type AllocationInstance } from '@rootclock/domain';
import loadHighs, { type Highs } from 'highs';
import { OutOfTime, solveGoals, solvePenalty } from '../../support/allocation/goal-sequence.ts';
import { type Goals, goalsOf, isServing } from '../../support/allocation/goals.ts';
import { drawSeason, type Season, type SeasonShape } from '../../support/allocation/season.ts';
import { median } from './figures.ts';
import { measurePromiseCheck, type PromiseCheckFigures } from './promise-check.ts';

export const LEAST_TIMES_FASTER = 10;
export const MOST_GROWTH = 15;
const SIZES = [
  [200, 50],
  [2000, 500],
  [20_000, 5000],
] as const;
/** So that HiGHS has few goals to solve, each season is measured with its lines in so few ranks as well. */
const FEW_RANKS = 10;
const TIMES = 5;

interface Taken {
  ms: number;
  /** Of the processor; a machine that does other work as well makes it hardly longer. */
  cpuMs: number;
}

type Compared = Taken & ({ ended: true; solves: number; equal: boolean; timesLonger: number } | { ended: false });

export interface AllocationRun extends Season {
  arcsALine: number;
  /** The median of some runs, and of the processor's time the same. */
  own: Taken & { times: number };
  /** The goals of the sequence; where it did not end, it was given up after so long. */
  sequence: Compared;
  /** The least penalty alone in one programme, with the units of each rank given to it. */
  penaltyOnly: Compared;
}

export interface AllocationFigures {
  runs: AllocationRun[];
  /** Processor time from the middle size to the largest. */
  growth: { shape: SeasonShape; ranks: 'each line its own' | 'few'; times: number }[];
  timesFasterInTheMiddle: number;
  promiseCheck: PromiseCheckFigures;
  met: { timesFaster: boolean; growth: boolean; totals: boolean };
}

function taken<T>(run: () => T): Taken & { answer: T } {
  const [from, cpuFrom] = [performance.now(), process.cpuUsage()];
  const answer = run();
  const { user, system } = process.cpuUsage(cpuFrom);
  return { ms: performance.now() - from, cpuMs: (user + system) / 1000, answer };
}

function compared(ownCpuMs: number, run: () => { solves: number; equal: boolean }): Compared {
  const { answer, ms, cpuMs } = taken(() => {
    try {
      return run();
    } catch (error) {
      if (error instanceof OutOfTime) return null;
      throw error;
    }
  });
  return answer === null
    ? { ended: false, ms, cpuMs }
    : { ended: true, ms, cpuMs, ...answer, timesLonger: cpuMs / ownCpuMs };
}

function arcsOf({ supply, demand }: AllocationInstance): number {
  const lots = new Map<string, (typeof supply)[number][]>();
  for (const lot of supply) lots.set(lot.item, [...(lots.get(lot.item) ?? []), lot]);
  return demand.reduce(
    (sum, line) =>
      sum +
      line.accepts.reduce(
        (arcs, { item }) => arcs + (lots.get(item) ?? []).filter((lot) => isServing(lot, line)).length,
        0,
      ),
    0,
  );
}

function measureSeason(highs: Highs, season: Season, seed: number, seconds: number): AllocationRun {
  const instance = drawSeason(season, seed);
  const runs = Array.from({ length: TIMES }, () => taken(() => allocate(instance)));
  const own = { ms: median(runs.map(({ ms }) => ms)), cpuMs: median(runs.map(({ cpuMs }) => cpuMs)), times: TIMES };
  const { assignments } = allocate(instance);
  const goals: Goals = goalsOf(instance, assignments);
  return {
    ...season,
    own,
    arcsALine: arcsOf(instance) / season.lines,
    sequence: compared(own.cpuMs, () => {
      const solved = solveGoals(highs, instance, seconds);
      return { solves: solved.solves, equal: JSON.stringify(solved.goals) === JSON.stringify(goals) };
    }),
    penaltyOnly: compared(own.cpuMs, () => {
      const { penalty, solves } = solvePenalty(highs, instance, goals.filled, seconds);
      return { solves, equal: penalty === goals.penalty };
    }),
  };
}

/** HiGHS is given up on an instance after so many seconds. */
export async function measureAllocation(
  seed: number,
  seconds: number,
  say: (line: string) => void,
): Promise<AllocationFigures> {
  const runs: AllocationRun[] = [];
  for (const shape of ['parts', 'scarce'] as const) {
    for (const [supplies, lines] of SIZES) {
      for (const ranks of [FEW_RANKS, lines]) {
        say(`allocating ${supplies} lots to ${lines} lines in ${ranks} ranks, ${shape}`);
        // What went wrong in one run of HiGHS must not reach the next, so each has a runtime of its own.
        runs.push(measureSeason(await loadHighs(), { shape, supplies, lines, ranks }, seed, seconds));
      }
    }
  }
  const [, [middle], [largest]] = SIZES;
  const cpuOf = (shape: SeasonShape, supplies: number, isFew: boolean) =>
    runs.find((run) => run.shape === shape && run.supplies === supplies && (run.ranks === FEW_RANKS) === isFew)?.own
      .cpuMs ?? NaN;
  const growth = (['parts', 'scarce'] as const).flatMap((shape) =>
    [true, false].map((isFew) => ({
      shape,
      ranks: isFew ? ('few' as const) : ('each line its own' as const),
      times: cpuOf(shape, largest, isFew) / cpuOf(shape, middle, isFew),
    })),
  );
  // Where the sequence did not end, it took that much longer at least.
  const ratios = runs
    .filter((run) => run.supplies === middle && run.ranks !== FEW_RANKS)
    .map(({ own, sequence }) => sequence.cpuMs / own.cpuMs);
  const all = runs.flatMap(({ sequence, penaltyOnly }) => [sequence, penaltyOnly]);
  const timesFasterInTheMiddle = Math.min(...ratios);
  say('checking promises where nearly all lines hang together');
  const promiseCheck = measurePromiseCheck(seed);
  return {
    runs,
    growth,
    timesFasterInTheMiddle,
    promiseCheck,
    met: {
      timesFaster: timesFasterInTheMiddle >= LEAST_TIMES_FASTER,
      growth: growth.filter(({ shape }) => shape === 'parts').every(({ times }) => times <= MOST_GROWTH),
      totals: all.every((one) => !one.ended || one.equal),
    },
  };
}
