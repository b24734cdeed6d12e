/** What other settings would change: the shares that move, and what a plan would start. */
import { unitsToStart } from '@rootclock/domain';
import { shapesInAll, shownStages, type Weighing } from './learned.ts';
import type { NurseryRecord, Settings } from './record-data.ts';

export interface ShareChange {
  plantId: string;
  method: NurseryRecord['shares'][number]['method'];
  label: string;
  stage: ReturnType<typeof shownStages>[number]['stage'];
  before: number;
  after: number;
}

const NOTICED = 0.005;

/** Shares that move by half a per cent or more, those that move most first. */
export function changesOf(shares: NurseryRecord['shares'], before: Weighing, after: Weighing): ShareChange[] {
  return shares
    .flatMap((each) => {
      const later = shownStages(each, after);
      return shownStages(each, before).flatMap(({ stage, share }, index) => {
        const changed = later[index]?.share ?? share;
        return Math.abs(changed - share) >= NOTICED
          ? [{ plantId: each.plantId, method: each.method, label: each.label, stage, before: share, after: changed }]
          : [];
      });
    })
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before));
}

export const WANTED = 50;

/** What a plan would start for fifty plants of the one with most counts, before and after; null where no plant has a protocol. */
export function startOf(
  shares: NurseryRecord['shares'],
  before: Settings,
  after: Pick<Settings, 'priorWeight' | 'evidenceLimit' | 'planConfidence'>,
): { plantId: string; before: number | null; after: number | null } | null {
  const tried = (each: NurseryRecord['shares'][number]) => each.evidence.reduce((sum, row) => sum + row.tried, 0);
  const most = shares.filter(({ protocol }) => protocol !== null).sort((a, b) => tried(b) - tried(a))[0];
  if (!most) return null;
  const units = (weighing: typeof after): number | null => {
    const success = shapesInAll(most, weighing);
    return success && unitsToStart({ wanted: WANTED, success, confidence: weighing.planConfidence });
  };
  return { plantId: most.plantId, before: units(before), after: units(after) };
}
