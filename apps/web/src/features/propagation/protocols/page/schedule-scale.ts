import { addDays, daysBetween, PACES, type Schedules, type StageKind } from '@rootclock/domain';
import { monthStarts } from '../../../../lib/month-starts.ts';

export interface ScheduleBar {
  kind: StageKind;
  /** Where the stage stands at the usual pace, 0 to 1 of the whole; both alike where it takes no time. */
  from: number;
  to: number;
  /** The earliest and the latest it may begin. */
  earliest: number;
  latest: number;
}

export interface ScheduleScale {
  bars: ScheduleBar[];
  /** First days of months, as many as are read without crowding. */
  ticks: { on: string; at: number }[];
  /** The given day, where it lies within. */
  today: number | null;
}

const MOST_TICKS = 4;
const STEPS = [1, 2, 3, 6, 12, 24];

/** A schedule as bars of a plane whose width is 1, from the first day of any pace to the last. */
export function scheduleScale(schedules: Schedules, today: string): ScheduleScale {
  const days = PACES.flatMap((pace) => [
    ...schedules[pace].stages.map(({ beginsOn }) => beginsOn),
    schedules[pace].readyOn,
  ]);
  const firstOn = days.reduce((first, on) => (on < first ? on : first));
  const latestOn = days.reduce((last, on) => (on > last ? on : last));
  // One day at least, so that nothing is divided by none.
  const lastOn = latestOn > firstOn ? latestOn : addDays(firstOn, 1);
  const whole = daysBetween(firstOn, lastOn);
  const at = (on: string) => daysBetween(firstOn, on) / whole;
  const { stages, readyOn } = schedules.usual;
  const step = STEPS.find((each) => monthStarts(firstOn, lastOn, each).length <= MOST_TICKS) ?? 24;
  return {
    bars: stages.map(({ kind, beginsOn }, index) => {
      const begins = PACES.map((pace) => schedules[pace].stages[index]?.beginsOn ?? beginsOn).sort();
      return {
        kind,
        from: at(beginsOn),
        to: at(stages[index + 1]?.beginsOn ?? readyOn),
        earliest: at(begins[0] ?? beginsOn),
        latest: at(begins[2] ?? beginsOn),
      };
    }),
    ticks: monthStarts(firstOn, lastOn, step).map((on) => ({ on, at: at(on) })),
    today: today >= firstOn && today <= lastOn ? at(today) : null,
  };
}
