import { type CalendarDate, requireDate } from '../kernel/dates.ts';
import type { RootBallResult } from './ledger-words.ts';

/** Since when plants are ready, or expected to be, and when their root balls were last found to hold. */
export interface Readiness {
  readyOn: CalendarDate | null;
  rootCheckedOn: CalendarDate | null;
}

/**
 * Readiness after a root ball was looked at. `holds` makes the plants ready from that day, or keeps the earlier day they were expected
 * on. `not-yet` takes an earlier check back and keeps or sets the expected day. `circling` says that the pot is too small and
 * leaves readiness alone. Throws InputError for a day that does not exist.
 */
export function readinessAfter(
  before: Readiness,
  check: { result: RootBallResult; on: CalendarDate; expectedOn?: CalendarDate | null },
): Readiness {
  requireDate('on', check.on);
  if (check.result === 'circling') return { ...before };
  if (check.result === 'holds')
    return {
      readyOn: before.readyOn !== null && before.readyOn < check.on ? before.readyOn : check.on,
      rootCheckedOn: check.on,
    };
  if (check.expectedOn) return { readyOn: requireDate('expectedOn', check.expectedOn), rootCheckedOn: null };
  // A day that has gone by without the ball holding is no expectation any more.
  return { readyOn: before.readyOn !== null && before.readyOn > check.on ? before.readyOn : null, rootCheckedOn: null };
}
