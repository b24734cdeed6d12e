import {
  addSpan,
  daysBetween,
  type PotLifeBasis,
  type PotLifeRule,
  survivalCurve,
  type SurvivalCurve,
  winningRules,
} from '@rootclock/domain';
import type { PotLife, RecordPlant } from './reads.ts';

export interface PotSurvival extends SurvivalCurve {
  containerId: string;
  containerName: string;
  plants: number;
  died: number;
  /** Days until the last plants that were watched. */
  lastDays: number;
  /** What the rules that bind these plants in this container allow, the shortest first. */
  limits: { basis: PotLifeBasis; span: string; days: number }[];
}

/** A span of calendar time as days of a year without a leap day. */
const daysOfSpan = (span: string) => daysBetween('2025-01-01', addSpan('2025-01-01', span));

/** A curve for each container in which any of the plants stood, the one with most of them first. */
export function survivalsOf(
  plant: RecordPlant,
  lives: readonly PotLife[],
  rules: readonly PotLifeRule[],
): PotSurvival[] {
  const byContainer = new Map<string, PotLife[]>();
  for (const life of lives) byContainer.set(life.containerId, [...(byContainer.get(life.containerId) ?? []), life]);
  return [...byContainer]
    .map(([containerId, own]) => {
      const subject = {
        lotId: null,
        plantId: plant.plantId,
        containerId,
        genus: plant.genus,
        rootHabit: plant.rootHabit,
      };
      const sum = (rows: readonly PotLife[]) => rows.reduce((units, row) => units + row.units, 0);
      return {
        containerId,
        containerName: own[0]?.containerName ?? '',
        plants: sum(own),
        died: sum(own.filter(({ died }) => died)),
        lastDays: Math.max(...own.map(({ days }) => days)),
        ...survivalCurve(own),
        limits: winningRules(rules, subject)
          .flatMap(({ basis, span }) => (span === null ? [] : [{ basis, span, days: daysOfSpan(span) }]))
          .sort((a, b) => a.days - b.days),
      };
    })
    .sort((a, b) => b.plants - a.plants);
}
