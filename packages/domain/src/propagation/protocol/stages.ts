import { type CalendarDate } from '../../kernel/dates.ts';
import { InputError, requireShare, requireWhole } from '../../kernel/input.ts';
import { type MonthDay, requireMonthDay } from '../../kernel/month-days.ts';
import type { Standing } from '../../kernel/standings.ts';
import { requireDormantMonths } from '../../pot-life/dormancy.ts';

/** The stages of propagation in the order in which a protocol may name them; each may be left out, none comes twice. */
export const STAGE_KINDS = [
  'scarification',
  'stratification',
  'sowing',
  'sticking',
  'emergence',
  'rooting',
  'pricking-out',
  'growing-on',
  'hardening',
  'root-check',
  'ready',
] as const;
export type StageKind = (typeof STAGE_KINDS)[number];

/** The three lengths of a stage: the quick tenth of batches, the middle one, and what nine of ten keep. */
export const PACES = ['short', 'usual', 'long'] as const;
export type Pace = (typeof PACES)[number];

/** How long no batch of any plant may be thought to stay in one stage: five years. */
export const MAX_STAGE_DAYS = 1830;

/** Days of the year, both included, on which a stage may begin; it may run over the year's end. */
export interface StageSeason {
  fromMd: MonthDay;
  toMd: MonthDay;
}

/** What schedules and yields need of a stage. Days count from its beginning to the beginning of the next one. */
export interface StagePlan {
  kind: StageKind;
  shortDays: number;
  usualDays: number;
  longDays: number;
  /** The share of what enters the stage that leaves it alive, 0 to 1. */
  share: number;
  /** Null where the stage may begin on any day. */
  season: StageSeason | null;
  /** Whether it makes no headway while the plant is dormant, as pots in the open do not. */
  rests: boolean;
}

/** Where a figure of a stage comes from. */
export interface FigureStanding {
  standing: Standing;
  source: string | null;
}

/** What a schedule is reckoned from. */
export interface ProtocolPlan {
  stages: readonly StagePlan[];
  /** Months 1 to 12 in which the plant is dormant. */
  dormantMonths: readonly number[];
}

export const daysOf = (stage: StagePlan, pace: Pace): number =>
  ({ short: stage.shortDays, usual: stage.usualDays, long: stage.longDays })[pace];

/**
 * Returns the plan when a schedule can be made of it. Throws InputError naming the stage's argument (`stages.2.usualDays`) for durations that
 * are negative, no whole days or out of order, shares outside 0 to 1, days of the year that do not exist, stages twice or out of order, and none.
 */
export function requireProtocolPlan(plan: ProtocolPlan): ProtocolPlan {
  requireDormantMonths('dormantMonths', plan.dormantMonths);
  if (plan.stages.length === 0) throw new InputError('stages', 'must hold at least one stage');
  let before = -1;
  for (const [at, stage] of plan.stages.entries()) {
    const order = STAGE_KINDS.indexOf(stage.kind);
    if (order <= before)
      throw new InputError(`stages.${at}.kind`, 'must come later in the order of stages than the one before it', {
        kind: stage.kind,
      });
    before = order;
    requireWhole(`stages.${at}.shortDays`, stage.shortDays, 0, MAX_STAGE_DAYS);
    requireWhole(`stages.${at}.usualDays`, stage.usualDays, 0, MAX_STAGE_DAYS);
    requireWhole(`stages.${at}.longDays`, stage.longDays, 0, MAX_STAGE_DAYS);
    if (stage.usualDays < stage.shortDays)
      throw new InputError(`stages.${at}.usualDays`, 'must not be shorter than the short duration', {
        least: stage.shortDays,
      });
    if (stage.longDays < stage.usualDays)
      throw new InputError(`stages.${at}.longDays`, 'must not be shorter than the usual duration', {
        least: stage.usualDays,
      });
    requireShare(`stages.${at}.share`, stage.share);
    if (stage.season !== null) {
      requireMonthDay(`stages.${at}.season.fromMd`, stage.season.fromMd);
      requireMonthDay(`stages.${at}.season.toMd`, stage.season.toMd);
    }
  }
  return plan;
}

/** One stage of a schedule. */
export interface ScheduledStage {
  kind: StageKind;
  beginsOn: CalendarDate;
}

/** A schedule at one pace: when each stage begins, and the day after which the plants are ready. */
export interface Schedule {
  stages: ScheduledStage[];
  readyOn: CalendarDate;
}

export type Schedules = Record<Pace, Schedule>;
