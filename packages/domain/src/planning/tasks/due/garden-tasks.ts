import { addDays, type CalendarDate, latestOf } from '../../../kernel/dates.ts';
import { awakeFrom } from '../awake.ts';
import type { TaskOrder, TaskPlanting } from '../facts.ts';
import { openTask, type Task } from '../task.ts';

/** Days after planting on which a garden is looked at: common practice. */
export const FOLLOW_UP_DAYS = 30;
/** A garden nobody looked at for so long after its day is not asked about any more. */
export const FOLLOW_UP_LAPSES_DAYS = 120;

/** Fetching an order's plants, and what is then done with them on the same day: into the ground, or into the client's hands. */
export function orderTasks(order: TaskOrder): Task[] {
  const about = {
    subject: { kind: 'order' as const, id: order.id, code: order.code },
    turn: 'order',
    dueOn: order.dueOn,
    endsBy: 'entry' as const,
    earliestOn: order.dueOn,
  };
  const rest = { lateOn: order.dueOn, unit: 'plant' as const };
  const readyUnits = order.toPullUnits + order.stagedUnits;
  return [
    ...(order.toPullUnits > 0
      ? [openTask({ kind: 'pull', ...about }, { ...rest, placeIds: order.placeIds, units: order.toPullUnits })]
      : []),
    ...(readyUnits > 0
      ? [
          openTask(
            { kind: order.kind === 'installation' ? 'plant-out' : 'hand-over', ...about },
            { ...rest, units: readyUnits },
          ),
        ]
      : []),
  ];
}

/**
 * A look at a garden thirty days after it was planted. Plants that look dead then and may only be dormant, as after an autumn planting, put the visit
 * off until the last-emergence day of the latest of them (common practice): nothing is written off for looking dead before that.
 */
export function followUpTask({ orderId, orderCode, plantedOn, units, plants }: TaskPlanting): Task {
  const soonest = addDays(plantedOn, FOLLOW_UP_DAYS);
  const asleep = plants
    .map((plant) => ({ name: plant.name, on: awakeFrom(plant, soonest) }))
    .filter(({ on }) => on > soonest);
  const dueOn = latestOf(soonest, ...asleep.map(({ on }) => on));
  return openTask(
    {
      kind: 'follow-up',
      subject: { kind: 'order', id: orderId, code: orderCode },
      turn: plantedOn,
      dueOn,
      endsBy: 'tick',
      earliestOn: plantedOn,
    },
    {
      units,
      unit: 'plant',
      details: { sinceOn: plantedOn, ...(asleep.length > 0 ? { dormant: asleep.map(({ name }) => name).sort() } : {}) },
    },
  );
}

export const hasLapsed = (task: Task, today: CalendarDate): boolean =>
  task.kind === 'follow-up' && addDays(task.dueOn, FOLLOW_UP_LAPSES_DAYS) < today;
