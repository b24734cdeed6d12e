/** The years that anything in a nursery can lie in, first and last: what is older or later is a slip of the pen. */
export const YEARS = { least: 1900, most: 2200 } as const;

/** Whether the year that a date, month, season or instant begins with is one of these. Expects text that is written rightly otherwise. */
export function isWithinYears(text: string): boolean {
  const year = Number(text.slice(0, 4));
  return year >= YEARS.least && year <= YEARS.most;
}
