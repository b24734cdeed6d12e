/** A day, an hour of a day or a season, as fields hold them: what follows from today begins with a year. */
const OF_A_DAY = /^\d{4}-/;
const isOfADay = (value: unknown): value is string => typeof value === 'string' && OF_A_DAY.test(value);

/** A form that stays open while its day turns: days that nobody has touched are as they would be in a form opened now. */
export function movedOn<Values extends object>(
  values: Values,
  touched: ReadonlySet<string>,
  before: Values,
  now: Values,
): Values {
  const changed = Object.entries(now).filter(([key, value]) => {
    const was = (before as Record<string, unknown>)[key];
    return !touched.has(key) && isOfADay(value) && isOfADay(was) && value !== was;
  });
  return changed.length === 0 ? values : { ...values, ...Object.fromEntries(changed) };
}
