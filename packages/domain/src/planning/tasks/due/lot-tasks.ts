import { addDays, type CalendarDate, daysBetween, latestOf } from '../../../kernel/dates.ts';
import { forwardAt } from '../../../propagation/protocol/schedule.ts';
import { type Pace, STAGE_KINDS, type StageKind, type StagePlan } from '../../../propagation/protocol/stages.ts';
import type { TaskBatch, TaskLot, TaskSpringCount } from '../facts.ts';
import type { TaskKind } from '../kinds.ts';
import { openTask, type Task } from '../task.ts';

/** Days after which a root ball that did not hold yet is looked at again: this nursery's own habit. */
export const LOOK_AGAIN_DAYS = 14;

const isAfterPotting = ({ kind }: StagePlan) => STAGE_KINDS.indexOf(kind) > STAGE_KINDS.indexOf('pricking-out');

const about = (
  lot: TaskLot,
  kind: TaskKind,
  { turn, dueOn, endsBy, lateOn }: Pick<Task, 'dueOn' | 'endsBy'> & { turn: string; lateOn?: CalendarDate | null },
): Task =>
  openTask(
    { kind, subject: { kind: 'lot', id: lot.id, code: lot.code }, turn, dueOn, endsBy, earliestOn: lot.pottedOn },
    {
      lateOn: lateOn ?? null,
      plantName: lot.plantName,
      placeIds: lot.placeIds,
      units: lot.units,
      unit: 'plant',
      details: { sinceOn: lot.pottedOn },
    },
  );

/**
 * Answers what lots need until their root balls hold: hardening and the check, each on the day that the protocol gives it after the potting. Lots of one
 * protocol and potting day have the same days, which are reckoned once for all that are asked for.
 */
export function lotTasks(): (lot: TaskLot) => Task[] {
  const schedules = new Map<readonly StagePlan[], Map<string, AfterPotting | null>>();
  const daysOf = (lot: TaskLot, pace: Pace): AfterPotting | null => {
    const ofProtocol = schedules.get(lot.stages) ?? new Map<string, AfterPotting | null>();
    schedules.set(lot.stages, ofProtocol);
    const key = `${lot.pottedOn}/${pace}/${lot.dormantMonths.join(' ')}`;
    const known = ofProtocol.get(key);
    if (known !== undefined) return known;
    const days = afterPotting(lot, pace);
    ofProtocol.set(key, days);
    return days;
  };
  return (lot) => {
    if (lot.rootChecked) return [];
    const usual = daysOf(lot, 'usual');
    const hardenOn = usual?.hardenOn ?? null;
    const expectedOn = lot.readyOn ?? usual?.checkOn ?? null;
    const checkOn =
      expectedOn !== null && lot.lookedAtOn !== null
        ? latestOf(expectedOn, addDays(lot.lookedAtOn, LOOK_AGAIN_DAYS))
        : expectedOn;
    return [
      ...(hardenOn
        ? [
            about(lot, 'harden', {
              turn: lot.pottedOn,
              dueOn: hardenOn,
              lateOn: daysOf(lot, 'long')?.hardenOn ?? null,
              endsBy: 'tick',
            }),
          ]
        : []),
      ...(checkOn ? [about(lot, 'check-root-ball', { turn: lot.pottedOn, dueOn: checkOn, endsBy: 'entry' })] : []),
    ];
  };
}

interface AfterPotting {
  hardenOn: CalendarDate | null;
  /** The day of the first stage that asks for the check. */
  checkOn: CalendarDate;
}

/** Days reckoned forward from the potting; null without a protocol. */
function afterPotting(lot: TaskLot, pace: Pace): AfterPotting | null {
  const stages = lot.stages.filter(isAfterPotting);
  if (stages.length === 0) return null;
  const schedule = forwardAt({ stages, dormantMonths: lot.dormantMonths }, lot.pottedOn, pace);
  const begins = (kind: StageKind) => schedule.stages.find((stage) => stage.kind === kind)?.beginsOn;
  return {
    hardenOn: begins('hardening') ?? null,
    checkOn: begins('root-check') ?? begins('ready') ?? schedule.readyOn,
  };
}

/** What must leave its cells or pots within the notice that the nursery gives, or should have left. */
export function leavingTasks(stock: TaskBatch | TaskLot, today: CalendarDate, noticeDays: number): Task[] {
  const { id, code, plantByOn } = stock;
  if (plantByOn === null || daysBetween(today, plantByOn) > noticeDays) return [];
  const isBatch = 'startedOn' in stock;
  const kind = isBatch ? 'batch' : 'lot';
  return [
    openTask(
      {
        kind: 'leave-the-pot',
        subject: { kind, id, code },
        turn: 'plant-by',
        dueOn: plantByOn,
        endsBy: 'entry',
        earliestOn: isBatch ? stock.startedOn : stock.pottedOn,
      },
      {
        lateOn: plantByOn,
        plantName: stock.plantName,
        placeIds: stock.placeIds,
        units: stock.units,
        unit: isBatch ? stock.unit : 'plant',
      },
    ),
  ];
}

/** Plants that were not up at the spring count are asked about on the day after the last on which they may come up; counting them once more is the answer. */
export function notYetUpTask({
  lotId,
  code,
  plantName,
  placeId,
  countedOn,
  notUpUnits,
  untilOn,
}: TaskSpringCount): Task {
  return openTask(
    {
      kind: 'ask-not-yet-up',
      subject: { kind: 'lot', id: lotId, code },
      turn: `${countedOn}-${placeId}`,
      dueOn: addDays(untilOn, 1),
      endsBy: 'entry',
      earliestOn: countedOn,
    },
    { plantName, placeIds: [placeId], units: notUpUnits, unit: 'plant', details: { sinceOn: countedOn } },
  );
}
