import type { Grounds } from '../grounds.ts';
import type { DemoLots } from '../lots.ts';
import { CUTTINGS, DIVISIONS, planFromMother } from './cuttings-and-divisions.ts';
import type { Mother } from './opening.ts';
import { planSowing, SOWINGS } from './sowings.ts';
import type { Stage } from '../stage.ts';

export function planPropagation(
  stage: Stage,
  grounds: Grounds,
  lots: DemoLots,
  mothers: readonly Mother[],
  firstYear: number,
  lastYear: number,
): void {
  for (let year = firstYear; year <= lastYear; year++) {
    for (const sowing of SOWINGS) planSowing(stage, grounds, lots, sowing, year, lastYear);
    for (const run of [
      ...CUTTINGS.map((r) => ({ ...r, method: 'cutting' as const })),
      ...DIVISIONS.map((r) => ({ ...r, method: 'division' as const })),
    ]) {
      const mother = mothers.find(({ plant }) => plant === run.plant);
      if (mother) planFromMother(stage, grounds, lots, run, mother, year);
    }
  }
}
