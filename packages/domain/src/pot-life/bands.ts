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

/** The plant-by days of a band, the first and the last of them; null where it has no end on that side. */
export function bandDays(
  band: Exclude<PotBand, 'unlimited'>,
  today: CalendarDate,
  noticeDays: number,
): { from: CalendarDate | null; until: CalendarDate | null } {
  requireWhole('noticeDays', noticeDays, 0, 366);
  const afterDue = noticeDays + 1;
  const afterComing = COMING_NOTICES * noticeDays + 1;
  switch (band) {
    case 'past':
      return { from: null, until: addDays(today, -1) };
    case 'due':
      return { from: today, until: addDays(today, afterDue - 1) };
    case 'coming':
      return { from: addDays(today, afterDue), until: addDays(today, afterComing - 1) };
    case 'ample':
      return { from: addDays(today, afterComing), until: null };
  }
}

/**
 * The last day on which plants may leave for a client who plants them `leadDays` later (pickup, market). Null when there
 * is no plant-by day. Throws InputError for a lead that is not 0 to 366 whole days.
 */
export function leaveBy(plantByOn: CalendarDate | null, leadDays: number): CalendarDate | null {
  requireWhole('leadDays', leadDays, 0, 366);
  return plantByOn === null ? null : addDays(requireDate('plantByOn', plantByOn), -leadDays);
}
