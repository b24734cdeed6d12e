import { dateOf, dateParts } from '@rootclock/domain';

/** First days of months after a day and up to another, of each month or of every so many, counted from January. */
export function monthStarts(firstOn: string, lastOn: string, step = 1): string[] {
  const starts: string[] = [];
  let { year, month } = dateParts(firstOn);
  for (;;) {
    month += 1;
    if (month > 12) [year, month] = [year + 1, 1];
    const on = dateOf({ year, month, day: 1 });
    if (on > lastOn) return starts;
    if ((month - 1) % Math.min(step, 12) === 0 && (step <= 12 || year % (step / 12) === 0)) starts.push(on);
  }
}
