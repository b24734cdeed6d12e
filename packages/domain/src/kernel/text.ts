/**
 * Orders two texts by their UTF-16 code units. Answers that must be the same on every machine are sorted with this and
 * never with a locale's collation, which differs between a server, a phone and the database.
 */
export function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
