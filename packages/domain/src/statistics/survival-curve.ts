import { InputError, MAX_UNITS, requireNotNegative, requireWhole } from '../kernel/input.ts';

export interface SurvivalObservation {
  /** From the start of the life that is watched until death, or until it was last seen alive; 0 or more. */
  days: number;
  /** false: it left the watch alive (sold, planted, still standing), so that its death is not known. */
  died: boolean;
  /** Plants that this row speaks of, 1 or more; 1 unless given. */
  units?: number;
}

export interface SurvivalStep {
  days: number;
  /** Still watched just before this day: who leaves the watch alive on a day of deaths counts as at risk on it. */
  atRisk: number;
  died: number;
  /** Share still alive after this day, 0 to 1. */
  survival: number;
  /** Greenwood's; 0 where nobody is left. */
  standardError: number;
}

export interface SurvivalCurve {
  /** One for each day on which somebody died, in order. */
  steps: SurvivalStep[];
  /** The first day with at most half still alive; null when it never came to that. */
  medianDays: number | null;
}

/** Rounding must not move a curve that stands at exactly a half, or a tenth, to beside it. */
export const SURVIVAL_ROUNDING = 1e-12;

function tallyByDay(observations: readonly SurvivalObservation[]): { days: number; died: number; left: number }[] {
  const tally = new Map<number, { days: number; died: number; left: number }>();
  for (const { days, died, units = 1 } of observations) {
    requireNotNegative('days', days);
    if (typeof died !== 'boolean') throw new InputError('died', 'must be true or false');
    requireWhole('units', units, 1, MAX_UNITS);
    const row = tally.get(days) ?? { days, died: 0, left: 0 };
    row[died ? 'died' : 'left'] += units;
    tally.set(days, row);
  }
  return [...tally.values()].sort((a, b) => a.days - b.days);
}

/**
 * The curve of survival by Kaplan and Meier, with Greenwood's standard errors, from plants of which some were last seen alive. A row may
 * stand for many plants. Without rows, or without deaths, there are no steps.
 * Throws InputError naming `days` that are negative or no number, `died` that is neither true nor false, `units` that are no whole number from 1.
 * Sources: E. L. Kaplan and P. Meier, Journal of the American Statistical Association 53, 1958, 457–481; M. Greenwood, 1926, for the errors.
 */
export function survivalCurve(observations: readonly SurvivalObservation[]): SurvivalCurve {
  const tally = tallyByDay(observations);
  let atRisk = tally.reduce((sum, row) => sum + row.died + row.left, 0);
  let survival = 1;
  let greenwood = 0;
  const steps: SurvivalStep[] = [];
  for (const { days, died, left } of tally) {
    if (died > 0) {
      const alive = atRisk - died;
      survival *= alive / atRisk;
      greenwood += died / (atRisk * alive);
      steps.push({ days, atRisk, died, survival, standardError: alive === 0 ? 0 : survival * Math.sqrt(greenwood) });
    }
    atRisk -= died + left;
  }
  return { steps, medianDays: steps.find((step) => step.survival <= 0.5 + SURVIVAL_ROUNDING)?.days ?? null };
}
