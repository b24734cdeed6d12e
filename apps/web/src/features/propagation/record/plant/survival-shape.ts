/** The curve of survival as points: steps down on the days of deaths, with a band of twice nearly the standard error. */
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

/** A line that keeps its height until the next step, up to `lastDays`. */
export function stepsOf(
  band: readonly BandStep[],
  of: 'survival' | 'low' | 'high',
  lastDays: number,
): { days: number; share: number }[] {
  const points = band.flatMap((step, index) => {
    const before = band[index - 1];
    return before
      ? [
          { days: step.days, share: before[of] },
          { days: step.days, share: step[of] },
        ]
      : [{ days: step.days, share: step[of] }];
  });
  const last = points.at(-1);
  return last && last.days < lastDays ? [...points, { days: lastDays, share: last.share }] : points;
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
