import { DateTime } from 'luxon';

/** The calendar day that it is in a zone. */
export function dayIn(now: Date, zone: string): string {
  const day = DateTime.fromJSDate(now, { zone }).toISODate();
  if (!day) throw new Error(`the time zone ${zone} is unknown`);
  return day;
}
