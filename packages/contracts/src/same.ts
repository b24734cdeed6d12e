/**
 * Whether two values of a field say the same to the person who edits it: empty is empty, whether as no value, an empty text or nothing sent, and no list
 * that people edit says anything by its order.
 */
export const saysTheSame = (one: unknown, other: unknown): boolean => canonical(one) === canonical(other);

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).sort().join()}]`;
  if (typeof value === 'object' && value !== null) {
    return `{${Object.entries(value)
      .map(([key, each]) => `${key}:${canonical(each)}`)
      .sort()
      .join()}}`;
  }
  return JSON.stringify(value === '' || value === undefined ? null : value);
}
