import { earliestOfDay, latestOf } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';

/** The first day of what was named: a day, month or season. Of one that has begun it is today; one that is over is refused. */
export function wantedDay(wanted: string, today: string): string {
  const { earliestOn, latestOn } = earliestOfDay(wanted, 'wanted');
  if (latestOn < today) refuse('wanted-day-past', { day: latestOn, today }, 'wanted');
  return latestOf(earliestOn, today);
}
