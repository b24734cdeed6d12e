import {
  addDays,
  type CalendarDate,
  dueTasks,
  FOLLOW_UP_LAPSES_DAYS,
  LOOK_AGAIN_DAYS,
  type Task,
  type TaskFacts,
} from '@rootclock/domain';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadNotUp } from '../../stock/winter/list-not-up.ts';
import { readTaskOrders, readTaskPlantings } from './gardens-reads.ts';
import { type PlaceRow, readNotice, readTaskPlaces, readTaskTests, readTicks, type TickRow } from './others-reads.ts';
import { readTaskBatches, readTaskLots } from './stock-reads.ts';

/** How far back plantings and ticks can still say anything of a task: a planting is visited within a year, when all that slept has come up, and lapses later. */
const MEMORY_DAYS = 366 + FOLLOW_UP_LAPSES_DAYS;

export interface LoadedTasks {
  tasks: Task[];
  places: ReadonlyMap<string, PlaceRow>;
  /** Who ticked what, by the task's key. */
  tickedBy: ReadonlyMap<string, string | null>;
}

/** Everything due from day to day, reckoned anew from what stands: nothing of it is stored but the ticks. */
export async function loadTasks(context: ReadContext, from: CalendarDate, until: CalendarDate): Promise<LoadedTasks> {
  const { today } = context;
  const since = addDays(today, -MEMORY_DAYS);
  const noticeDays = await readNotice(context);
  const places = await readTaskPlaces(context);
  const ticks = await readTicks(context, since);
  const facts: TaskFacts = {
    today,
    noticeDays,
    ticks,
    batches: await readTaskBatches(context),
    lots: await readTaskLots(context, {
      leaveBy: addDays(today, noticeDays),
      lookedSince: addDays(today, -LOOK_AGAIN_DAYS),
    }),
    places: places.filter(({ isRetired }) => !isRetired),
    orders: await readTaskOrders(context, until),
    plantings: await readTaskPlantings(context, since),
    springCounts: (await loadNotUp(context, { waiting: true })).map(({ scientificName, ...row }) => ({
      ...row,
      plantName: scientificName,
    })),
    tests: await readTaskTests(context),
  };
  return {
    tasks: dueTasks(facts, from, until),
    places: byId(places),
    tickedBy: new Map(ticks.map(({ key, person }: TickRow) => [key, person])),
  };
}

const byId = (places: readonly PlaceRow[]): Map<string, PlaceRow> => new Map(places.map((place) => [place.id, place]));
