import { addDays, type CalendarDate } from '../../kernel/dates.ts';
import { lastOpenDay, nextOpening, type WindowOpening, type WindowsFor } from '../../pot-life/windows.ts';
import { backAt, forwardAt } from '../../propagation/protocol/schedule.ts';
import type { ProtocolPlan, Schedule } from '../../propagation/protocol/stages.ts';
import { weekStart } from '../weeks.ts';
import { pacedFor } from './pace.ts';

/**
 * When a batch is to be started. `coming`: in a later week. `due`: this week. `overdue`: the day has passed, and what is started today can still be
 * ready in time if it goes quickly. `too-late`: not even then.
 */
export const START_STATES = ['coming', 'due', 'overdue', 'too-late'] as const;
export type StartState = (typeof START_STATES)[number];

export interface StartTiming {
  state: StartState;
  /** The last day on which it may be started to be ready at the confidence; today or the next day of its season where that has passed. */
  startOn: CalendarDate;
  /** The day that was missed, with `overdue` and `too-late`. */
  missedOn: CalendarDate | null;
  schedule: Schedule;
  /** The day it has to be ready on. */
  targetOn: CalendarDate;
  /** When it is ready, reckoned at the confidence and at its usual pace. */
  readyOn: CalendarDate;
  usualReadyOn: CalendarDate;
  /** The planting window that holds the target day. */
  window: WindowOpening | null;
  /** With `overdue` and `too-late`: the first day on which it can go out after it is ready. */
  servesOn: CalendarDate | null;
}

/** The first day on or after `on` on which plants may go out, or null where no window ever opens. Without windows every day is open. */
export function firstOpenDay({ configured, ranges }: WindowsFor, on: CalendarDate): CalendarDate | null {
  if (!configured || lastOpenDay(ranges, on)?.on === on) return on;
  return nextOpening(ranges, on)?.opensOn ?? null;
}

function windowAt({ ranges }: WindowsFor, on: CalendarDate): WindowOpening | null {
  const last = lastOpenDay(ranges, on);
  return last?.on === on ? last.opening : null;
}

const startOf = (schedule: Schedule, otherwise: CalendarDate) => schedule.stages[0]?.beginsOn ?? otherwise;

/**
 * When to start a batch under a protocol so that it is ready on a day. The schedule is reckoned back within each stage's season, at the pace the
 * confidence asks for (see pacedFor). Where the start has passed, it is reckoned forward from today. Throws InputError as backAt does.
 */
export function startTiming(
  plan: ProtocolPlan,
  {
    today,
    targetOn,
    confidence,
    windows,
  }: { today: CalendarDate; targetOn: CalendarDate; confidence: number; windows: WindowsFor },
): StartTiming {
  const paced = pacedFor(plan, confidence);
  const back = backAt(paced, targetOn, 'usual');
  const lastStartOn = startOf(back, targetOn);
  const window = windowAt(windows, targetOn);
  if (lastStartOn >= today) {
    const state = lastStartOn < addDays(weekStart(today), 7) ? 'due' : 'coming';
    const usualReadyOn = forwardAt(plan, lastStartOn, 'usual').readyOn;
    return {
      state,
      startOn: lastStartOn,
      missedOn: null,
      schedule: back,
      targetOn,
      readyOn: targetOn,
      usualReadyOn,
      window,
      servesOn: null,
    };
  }
  const schedule = forwardAt(paced, today, 'usual');
  const state = forwardAt(plan, today, 'short').readyOn <= targetOn ? 'overdue' : 'too-late';
  return {
    state,
    startOn: startOf(schedule, today),
    missedOn: lastStartOn,
    schedule,
    targetOn,
    readyOn: schedule.readyOn,
    usualReadyOn: forwardAt(plan, today, 'usual').readyOn,
    window,
    servesOn: firstOpenDay(windows, schedule.readyOn),
  };
}
