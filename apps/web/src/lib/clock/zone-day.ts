/** The calendar of a time zone, by the browser's own tables: a day may have 23, 24 or 25 hours, and midnight may not exist. */

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US-u-ca-gregory-nu-latn', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  formats.set(zone, made);
  return made;
}

/** The day, as `YYYY-MM-DD`, on which an instant in milliseconds falls in a zone. Throws a RangeError where the browser does not know the zone. */
export function dayIn(at: number, zone: string): string {
  const parts = new Map(
    formatOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  return `${parts.get('year')?.padStart(4, '0')}-${parts.get('month')}-${parts.get('day')}`;
}

const HOUR_MS = 3_600_000;
/** No day is longer: 25 hours where the clocks go back, and one to spare. */
const LONGEST_DAY_MS = 26 * HOUR_MS;

/** The first millisecond of the day after the one that an instant falls on. */
export function nextDayAt(at: number, zone: string): number {
  const day = dayIn(at, zone);
  let within = at;
  let after = at + LONGEST_DAY_MS;
  while (after - within > 1) {
    const middle = Math.floor((within + after) / 2);
    if (dayIn(middle, zone) === day) within = middle;
    else after = middle;
  }
  return after;
}
