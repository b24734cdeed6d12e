import { type CalendarDate, requireDate } from '../../kernel/dates.ts';
import { afterGrowing, beforeGrowing, lastInSeason, nextInSeason } from './season.ts';
import {
  daysOf,
  type Pace,
  type ProtocolPlan,
  requireProtocolPlan,
  type Schedule,
  type ScheduledStage,
  type Schedules,
  type StagePlan,
} from './stages.ts';

const NEVER_DORMANT: readonly number[] = [];
const dormantFor = (plan: ProtocolPlan, stage: StagePlan) => (stage.rests ? plan.dormantMonths : NEVER_DORMANT);

/**
 * The day each stage begins when the first begins on `startOn` or the next day its season allows, at one pace. A stage waits for its season.
 * Throws InputError for a plan that is none or a day that does not exist.
 */
export function forwardAt(plan: ProtocolPlan, startOn: CalendarDate, pace: Pace): Schedule {
  requireProtocolPlan(plan);
  let on = requireDate('startOn', startOn);
  const stages = plan.stages.map((stage): ScheduledStage => {
    const beginsOn = nextInSeason(stage.season, on);
    on = afterGrowing(beginsOn, daysOf(stage, pace), dormantFor(plan, stage));
    return { kind: stage.kind, beginsOn };
  });
  return { stages, readyOn: on };
}

/**
 * The last days on which the stages may begin for the plants to be ready on `readyOn`, at one pace: the latest start with
 * `forwardAt(plan, start).readyOn <= readyOn`. Throws InputError for a plan that is none or a day that does not exist.
 */
export function backAt(plan: ProtocolPlan, readyOn: CalendarDate, pace: Pace): Schedule {
  requireProtocolPlan(plan);
  let on = requireDate('readyOn', readyOn);
  const stages: ScheduledStage[] = [];
  for (const stage of [...plan.stages].reverse()) {
    on = lastInSeason(stage.season, beforeGrowing(on, daysOf(stage, pace), dormantFor(plan, stage)));
    stages.unshift({ kind: stage.kind, beginsOn: on });
  }
  return { stages, readyOn };
}

const atEachPace = (schedule: (pace: Pace) => Schedule): Schedules => ({
  short: schedule('short'),
  usual: schedule('usual'),
  long: schedule('long'),
});

/**
 * The days of each stage, short, usual and long, for a batch that is started on `startOn`. Stages that rest make no headway in dormant months,
 * and a stage with a season waits for it. Throws InputError for a plan that is none or a day that does not exist.
 */
export const forwardSchedule = (plan: ProtocolPlan, startOn: CalendarDate): Schedules =>
  atEachPace((pace) => forwardAt(plan, startOn, pace));

/**
 * The last day each stage may begin, short, usual and long, for the plants to be ready on `readyOn`. It is the counterpart of forwardSchedule:
 * starting on its first day leads to a ready day on or before `readyOn`, starting a day later never does.
 * Throws InputError for a plan that is none or a day that does not exist.
 */
export const backSchedule = (plan: ProtocolPlan, readyOn: CalendarDate): Schedules =>
  atEachPace((pace) => backAt(plan, readyOn, pace));
