import { type CalendarDate, daysBetween } from '../../kernel/dates.ts';

/**
 * What newly came up or rooted on each day since the start, the first entry one day after it, from counts of what is alive. What is seen for the
 * first time at a count is booked on that count's day, and days that nobody counted have none: times reckoned from it are those by which it was seen,
 * later rather than earlier than they were. A count that is no higher than an earlier one adds nothing, since what died had come up. Counts of the day
 * of the start itself go to the day after. Throws InputError for a day that does not exist.
 */
export function newPerDay(
  counts: readonly { on: CalendarDate; emergedUnits: number }[],
  startedOn: CalendarDate,
): number[] {
  const days: number[] = [];
  let most = 0;
  for (const { on, emergedUnits } of [...counts].sort((a, b) => (a.on < b.on ? -1 : 1))) {
    const at = Math.max(1, daysBetween(startedOn, on)) - 1;
    while (days.length <= at) days.push(0);
    days[at] = (days[at] ?? 0) + Math.max(0, emergedUnits - most);
    most = Math.max(most, emergedUnits);
  }
  return days;
}
