import { addDays, type CalendarDate, daysBetween, requireDate } from '../kernel/dates.ts';
import { requireWhole } from '../kernel/input.ts';

/**
 * How near a plant-by day is, nearest first. `past`: the day is over. `due`: it is today or within the notice. `coming`:
 * within three times the notice. `ample`: later. `unlimited`: there is no such day.
 */
export const POT_BANDS = ['past', 'due', 'coming', 'ample', 'unlimited'] as const;
export type PotBand = (typeof POT_BANDS)[number];

export interface PotBandResult {
  band: PotBand;
  /** Days from today to the plant-by day: 0 on the day itself, negative when it is over, null when there is none. */
  daysLeft: number | null;
}

const COMING_NOTICES = 3;

/** The band of a plant-by day. The notice is whole days, 0 to 366. Throws InputError for anything else or a bad day. */
export function potBand(plantByOn: CalendarDate | null, today: CalendarDate, noticeDays: number): PotBandResult {
  requireDate('today', today);
  requireWhole('noticeDays', noticeDays, 0, 366);
  if (plantByOn === null) return { band: 'unlimited', daysLeft: null };
  const daysLeft = daysBetween(today, requireDate('plantByOn', plantByOn));
  if (daysLeft < 0) return { band: 'past', daysLeft };
  if (daysLeft <= noticeDays) return { band: 'due', daysLeft };
  return { band: daysLeft <= COMING_NOTICES * noticeDays ? 'coming' : 'ample', daysLeft };
}

/**
 * The last day on which plants may leave for a client who plants them `leadDays` later (pickup, market). Null when there
 * is no plant-by day. Throws InputError for a lead that is not 0 to 366 whole days.
 */
export function leaveBy(plantByOn: CalendarDate | null, leadDays: number): CalendarDate | null {
  requireWhole('leadDays', leadDays, 0, 366);
  return plantByOn === null ? null : addDays(requireDate('plantByOn', plantByOn), -leadDays);
}
