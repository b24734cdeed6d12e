import type { Plan } from './plan-words.ts';

type Week = Plan['weeks'][number];

export interface BenchBar {
  startsOn: string;
  /** From 0, at the base, to 1. */
  standing: number;
  together: number;
}

export interface BenchShape {
  weeks: Week[];
  bars: BenchBar[];
  /** Where what there is lies, from 0 to 1; null where nobody measured it. */
  capacity: number | null;
  peak: Week;
  /** What a height of 1 stands for. */
  topCm2: number;
}

const used = (week: Week): number => week.standingCm2 + week.plannedCm2;
/** A chart of a year at least, and of all weeks in which the plan has something. */
const LEAST_WEEKS = 53;

/** Weeks as bars of one height: the highest bar or what there is, whichever is more, reaches 1. Null where nothing stands and nothing is planned. */
export function benchShape({ weeks, capacityCm2 }: Pick<Plan, 'weeks' | 'capacityCm2'>): BenchShape | null {
  const last = weeks.reduce((most, week, at) => (week.plannedCm2 > 0 ? at : most), 0);
  const shown = weeks.slice(0, Math.max(LEAST_WEEKS, last + 2));
  const [first] = shown;
  if (!first) return null;
  const peak = shown.reduce((most, week) => (used(week) > used(most) ? week : most), first);
  const top = Math.max(used(peak), capacityCm2 ?? 0);
  if (used(peak) === 0) return null;
  return {
    weeks: shown,
    peak,
    topCm2: top,
    capacity: capacityCm2 === null ? null : capacityCm2 / top,
    bars: shown.map((week) => ({
      startsOn: week.startsOn,
      standing: week.standingCm2 / top,
      together: used(week) / top,
    })),
  };
}
