/**
 * What a form had read of the row that it edits, and how its entry is put together with what somebody else saved meanwhile: each field goes to whoever
 * changed it, and where both did the person chooses. Values are those of the command's body.
 */
import { type Edited, saysTheSame } from '@rootclock/contracts';

export type Fields = Record<string, unknown>;

export interface AsRead {
  edition: number;
  /** The body as it would have been sent with nothing changed; null where an entry kept from before does not tell. */
  body: Fields | null;
}

/** What an entry that was kept on the device says of what its form had read. */
export function asReadOf({ edition, was, ...body }: Fields): AsRead {
  return {
    edition: typeof edition === 'number' ? edition : 1,
    body: was === undefined ? null : { ...body, ...(was as Fields) },
  };
}

/** What goes with the body, so that the server can tell which of its fields the person changed. */
export function sentWith({ edition, body }: AsRead, whole: Fields): { edition: number; was?: Fields } {
  if (body === null) return { edition };
  const changed = [...new Set([...Object.keys(body), ...Object.keys(whole)])].filter(
    (field) => !saysTheSame(body[field], whole[field]),
  );
  return { edition, was: Object.fromEntries(changed.map((field) => [field, body[field] ?? null])) };
}

export type Choice = 'mine' | 'theirs';

/** The body that keeps the one or the other where both changed a field. */
export function settled(
  { edition: _edition, was, ...sent }: Fields,
  { stored, fields }: Edited,
  choice: Choice,
): Fields {
  const isMine = (field: string) => was === undefined || Object.hasOwn(was as Fields, field);
  const clashes = new Set(fields.map(({ field }) => field));
  const theirs = Object.entries(stored).filter(
    ([field]) => !isMine(field) || (choice === 'theirs' && clashes.has(field)),
  );
  return { ...sent, ...Object.fromEntries(theirs) };
}

/** Whether nothing of the person's own is left to save. */
export const isAsStored = (body: Fields, { stored }: Edited): boolean =>
  Object.entries(stored).every(([field, value]) => saysTheSame(body[field], value));

/** The values that show a body, where fields are called as in the body: an empty text field for no value. */
export function valuesOf<Values extends object>(body: Fields, initial: Values): Values {
  const shown = Object.entries(initial).map(([name, before]) => [
    name,
    Object.hasOwn(body, name) ? (body[name] ?? (typeof before === 'string' ? '' : null)) : before,
  ]);
  return Object.fromEntries(shown) as Values;
}
