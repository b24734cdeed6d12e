import type { CalendarDate } from '../kernel/dates.ts';
import { addSpan } from '../kernel/spans.ts';

interface StageEnds {
  dueOn: CalendarDate;
  lateOn: CalendarDate;
}

/**
 * When a stage that began on `begunOn` ends after all, if somebody decided on `keptOn` to wait for another winter: as many years on as bring its long
 * end past that day, and one at least. Deciding the same twice in a year changes nothing. A decision before the stage began does not concern it.
 */
export function afterSecondWinter(
  { dueOn, lateOn }: StageEnds,
  begunOn: CalendarDate,
  keptOn: CalendarDate | null,
): StageEnds {
  if (keptOn === null || keptOn < begunOn) return { dueOn, lateOn };
  let years = 1;
  while (addSpan(lateOn, `P${years}Y`) <= keptOn) years += 1;
  return { dueOn: addSpan(dueOn, `P${years}Y`), lateOn: addSpan(lateOn, `P${years}Y`) };
}
