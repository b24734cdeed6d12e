/** The curve of survival as points: steps down on the days of deaths, with a band of twice nearly the standard error. */
import { area, curveStepAfter, line } from 'd3-shape';
import type { PotSurvival } from '../record-data.ts';

export interface BandStep {
  days: number;
  survival: number;
  low: number;
  high: number;
}

/** The normal deviate of a two-sided band of 95 in a hundred. */
const DEVIATE = 1.959964;

/** From the first day, on which all live, over each day of deaths; the band never leaves none and all. */
export function bandOf(steps: PotSurvival['steps']): BandStep[] {
  return [
    { days: 0, survival: 1, low: 1, high: 1 },
    ...steps.map(({ days, survival, standardError }) => ({
      days,
      survival,
      low: Math.max(0, survival - DEVIATE * standardError),
      high: Math.min(1, survival + DEVIATE * standardError),
    })),
  ];
}

/** What lives after a day; the last step before it holds. */
export const survivalAt = (band: readonly BandStep[], days: number): number =>
  band.filter((step) => step.days <= days).at(-1)?.survival ?? 1;

/** With the last day watched as its end, on which what held before holds still. */
export function heldUntil(band: readonly BandStep[], lastDays: number): BandStep[] {
  const last = band.at(-1);
  return last && last.days < lastDays ? [...band, { ...last, days: lastDays }] : [...band];
}

interface Scales {
  xOf: (days: number) => number;
  yOf: (share: number) => number;
}

/** The curve and its band as paths: each step keeps its height until the next one's day. */
export function survivalPaths(band: readonly BandStep[], { xOf, yOf }: Scales): { curve: string; band: string } {
  const x = ({ days }: BandStep) => xOf(days);
  const curve = line<BandStep>(x, ({ survival }) => yOf(survival));
  const around = area<BandStep>(
    x,
    ({ low }) => yOf(low),
    ({ high }) => yOf(high),
  );
  return {
    curve: curve.curve(curveStepAfter).digits(1)(band) ?? '',
    band: around.curve(curveStepAfter).digits(1)(band) ?? '',
  };
}

const MOST_SHOWN = 24;

/** As many of the steps as a table can be read with, evenly over the curve; the last one always. */
export function thinned<Step>(steps: readonly Step[]): Step[] {
  if (steps.length <= MOST_SHOWN) return [...steps];
  return Array.from(
    { length: MOST_SHOWN },
    (_, index) => steps[Math.round((index * (steps.length - 1)) / (MOST_SHOWN - 1))] as Step,
  );
}
