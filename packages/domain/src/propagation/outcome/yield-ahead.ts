import type { CalendarDate } from '../../kernel/dates.ts';
import { isCurrentStage, type StageProgress } from '../batch-stages.ts';
import type { LearnedStage } from '../learning/learn-stages.ts';
import { STAGE_KINDS, type StageKind } from '../protocol/stages.ts';
import { type BatchUnit, isUnitOnePlant } from '../words.ts';
import { type ExpectedYield, expectedYield } from './expected-yield.ts';

/** What is known of a batch when its yield is asked for. */
export interface BatchNow {
  unit: BatchUnit;
  startedUnits: number;
  standingUnits: number;
  /** Seeds sown, where they are known. */
  seedsSown: number | null;
  /** Plants that should live now by the last count; null before the first. */
  aliveUnits: number | null;
  /** Plants potted from it so far. */
  pottedPlants: number;
}

/** A yield with what it was reckoned from: units that stand, seeds, or the plants of the last count. */
export interface YieldAhead extends ExpectedYield {
  tried: number;
  from: 'units' | 'seeds' | 'count';
  /** The stages still to be passed, with what is believed of each. */
  ahead: LearnedStage[];
}

const rank = (kind: StageKind) => STAGE_KINDS.indexOf(kind);
/** Stages that are learned as one are ahead as long as one of them is. */
const aheadOf = (learned: readonly LearnedStage[], from: number) =>
  learned.filter(({ covers }) => covers.some((kind) => rank(kind) >= from));

/** Units or seeds not yet counted. Trays and packs say nothing of plants by themselves: their seeds do, in proportion to what is left of them. */
function untold({
  unit,
  startedUnits,
  standingUnits,
  seedsSown,
  pottedPlants,
}: BatchNow): { tried: number; from: 'units' | 'seeds' } | null {
  if (isUnitOnePlant(unit)) return { tried: standingUnits, from: 'units' };
  if (seedsSown === null || pottedPlants > 0 || startedUnits === 0) return null;
  return { tried: Math.round((seedsSown * Math.min(standingUnits, startedUnits)) / startedUnits), from: 'seeds' };
}

/**
 * What a batch may still yield by what is believed of the stages ahead of it. Before its first count its units (of trays and packs, its seeds) have all
 * of them ahead. Once counted, the plants alive have what follows emergence or rooting ahead; while more may still come up, that is until the long end
 * of emergence or rooting, the better of both answers holds, since a first count says little of the last. Null where neither plants nor seeds are known.
 * Throws InputError as expectedYield does.
 */
export function yieldAhead(
  batch: BatchNow,
  learned: readonly LearnedStage[],
  progress: readonly StageProgress[],
  today: CalendarDate,
  confidence: number,
): YieldAhead | null {
  const current = progress.find(isCurrentStage);
  const coming = progress.find(({ kind }) => kind === 'emergence' || kind === 'rooting');
  const mayComeUp =
    coming !== undefined && (coming.state !== 'done' || (coming.begunOn !== null && today <= coming.lateOn));
  const reckon = (from: { tried: number; from: YieldAhead['from'] }, rankFrom: number): YieldAhead => {
    const ahead = aheadOf(learned, rankFrom);
    return { ...expectedYield({ tried: from.tried, ahead, confidence }), ...from, ahead };
  };
  const answers: YieldAhead[] = [];
  const uncounted = untold(batch);
  const now = rank(current?.kind ?? 'scarification');
  if (uncounted && (batch.aliveUnits === null || mayComeUp))
    answers.push(reckon(uncounted, batch.aliveUnits === null ? now : Math.min(now, rank('emergence'))));
  if (batch.aliveUnits !== null)
    answers.push(reckon({ tried: batch.aliveUnits, from: 'count' }, Math.max(now, rank('rooting') + 1)));
  return answers.reduce<YieldAhead | null>(
    (best, next) => (best === null || next.cautiousUnits > best.cautiousUnits ? next : best),
    null,
  );
}
