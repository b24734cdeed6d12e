import { addDays, type CalendarDate, daysBetween, latestOf, requireDate } from '../kernel/dates.ts';
import { requireWhole } from '../kernel/input.ts';
import { afterGrowing, lastInSeason, nextInSeason } from './protocol/season.ts';
import { daysOf, type Pace, type ProtocolPlan, requireProtocolPlan, type StageKind } from './protocol/stages.ts';
import { afterSecondWinter } from './second-winter.ts';

/** How far a batch has come with a stage: behind it, in it, in it longer than nine of ten batches are, or before it. */
export type StageState = 'done' | 'current' | 'late' | 'coming';

/** A stage of a batch. Its position is its place among the stages of the protocol, from 0. */
export interface StageProgress {
  position: number;
  kind: StageKind;
  state: StageState;
  /** Null where it has not begun, or was passed over. */
  begunOn: CalendarDate | null;
  /** The day it should begin, or should have begun: the usual end of the stage before it, or the next day its season allows. */
  shouldBeginOn: CalendarDate;
  /** Its usual end, when the next stage should begin. */
  dueOn: CalendarDate;
  /** Its long end, the last day on which it is not late; cut where the season of the next stage closes before. */
  lateOn: CalendarDate;
}

/** The day on which a stage began. */
export interface StageBeginning {
  position: number;
  on: CalendarDate;
}

/** Whether it is the stage the batch is in. */
export const isCurrentStage = ({ state }: Pick<StageProgress, 'state'>): boolean =>
  state === 'current' || state === 'late';

function endAt(plan: ProtocolPlan, position: number, from: CalendarDate, pace: Pace): CalendarDate {
  const stage = plan.stages[position];
  return stage ? afterGrowing(from, daysOf(stage, pace), stage.rests ? plan.dormantMonths : []) : from;
}

/** When the stage ends by itself, waiting for no season. */
function ends(plan: ProtocolPlan, position: number, from: CalendarDate, secondWinterOn: CalendarDate | null) {
  return afterSecondWinter(
    { dueOn: endAt(plan, position, from, 'usual'), lateOn: endAt(plan, position, from, 'long') },
    from,
    secondWinterOn,
  );
}

/** A stage goes on until the next one may begin, and is late as many days after that as the long duration leaves, within the season. */
function endsInSeason(plan: ProtocolPlan, position: number, from: CalendarDate, secondWinterOn: CalendarDate | null) {
  const raw = ends(plan, position, from, secondWinterOn);
  const season = plan.stages[position + 1]?.season ?? null;
  const dueOn = nextInSeason(season, raw.dueOn);
  return { dueOn, lateOn: latestOf(dueOn, lastInSeason(season, addDays(dueOn, daysBetween(raw.dueOn, raw.lateOn)))) };
}

/**
 * The stages of a batch that was started on `startedOn` and began some of them, as they stand on the day `today`. Stages after the last begun one are
 * reckoned from its usual end, or from today where that has passed. A batch that is kept for a second winter on `secondWinterOn` is due and late a
 * year on in the stage it was in. With none begun, all are still to come. The stage `ready` is an end and never late.
 * Throws InputError for a plan that is none, a day that does not exist and a position that the plan lacks.
 */
export function stageProgress(
  plan: ProtocolPlan,
  startedOn: CalendarDate,
  begun: readonly StageBeginning[],
  today: CalendarDate,
  secondWinterOn: CalendarDate | null = null,
): StageProgress[] {
  requireProtocolPlan(plan);
  requireDate('today', today);
  const began = new Map(
    begun.map(({ position, on }) => [
      requireWhole('begun.position', position, 0, plan.stages.length - 1),
      requireDate('begun.on', on),
    ]),
  );
  const current = Math.max(-1, ...began.keys());
  let next = requireDate('startedOn', startedOn);
  return plan.stages.map((stage, position): StageProgress => {
    const begunOn = began.get(position) ?? null;
    const shouldBeginOn = nextInSeason(stage.season, next);
    // What has not begun by today begins today at the earliest.
    const from =
      begunOn ?? (position > current ? nextInSeason(stage.season, latestOf(shouldBeginOn, today)) : shouldBeginOn);
    const { dueOn, lateOn } = endsInSeason(plan, position, from, position === current ? secondWinterOn : null);
    next = dueOn;
    const state =
      position < current
        ? 'done'
        : position > current
          ? 'coming'
          : stage.kind !== 'ready' && today > lateOn
            ? 'late'
            : 'current';
    return { position, kind: stage.kind, state, begunOn, shouldBeginOn, dueOn, lateOn };
  });
}

/** The stage a batch is in, as it is stored. The end `ready` is due and late on no day. */
export interface CurrentStage {
  position: number;
  kind: StageKind;
  begunOn: CalendarDate;
  dueOn: CalendarDate | null;
  lateOn: CalendarDate | null;
}

/** The stage a batch is in, or null where none has begun; it does not depend on the day it is asked on. Throws as `stageProgress` does. */
export function currentStage(
  plan: ProtocolPlan,
  startedOn: CalendarDate,
  begun: readonly StageBeginning[],
  secondWinterOn: CalendarDate | null,
): CurrentStage | null {
  const current = stageProgress(plan, startedOn, begun, startedOn, secondWinterOn).find(isCurrentStage);
  if (!current?.begunOn) return null;
  const { position, kind, begunOn, dueOn, lateOn } = current;
  return kind === 'ready'
    ? { position, kind, begunOn, dueOn: null, lateOn: null }
    : { position, kind, begunOn, dueOn, lateOn };
}

/**
 * The day on which the batch is ready at a pace, reckoned from the stage it is in and never before today; null where none of its stages has begun.
 * Takes what `stageProgress` answered for the same plan, day and second winter. Throws InputError for a day that does not exist.
 */
export function readyFrom(
  plan: ProtocolPlan,
  progress: readonly StageProgress[],
  today: CalendarDate,
  pace: 'usual' | 'long',
  secondWinterOn: CalendarDate | null = null,
): CalendarDate | null {
  const current = progress.find(isCurrentStage);
  if (!current?.begunOn) return null;
  const end = ends(plan, current.position, current.begunOn, secondWinterOn);
  let on = latestOf(pace === 'usual' ? end.dueOn : end.lateOn, requireDate('today', today));
  for (const [position, stage] of plan.stages.entries())
    if (position > current.position) on = endAt(plan, position, nextInSeason(stage.season, on), pace);
  return on;
}
