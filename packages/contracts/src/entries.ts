import * as z from 'zod/mini';
import type { ErrorAnswer } from './errors/index.ts';
import { id, text } from './fields.ts';

/** What waited on a device is sent in parts of this many entries. */
export const MOST_ENTRIES = 50;

const entry = z.strictObject({
  /** `stock.loseFromLot` */
  name: text(z.minLength(1), z.maxLength(100)),
  commandId: id,
  personId: id,
  body: z.unknown(),
  /** Entries before it without which it means nothing: if one of them is refused, it is left out. */
  after: z.array(id).check(z.maxLength(MOST_ENTRIES)),
});

export const sendEntries = z.strictObject({ entries: z.array(entry).check(z.minLength(1), z.maxLength(MOST_ENTRIES)) });

/** What became of one entry. There may be fewer than entries: those without one wait on. */
export type EntryOutcome =
  | { kind: 'answered'; answer: unknown }
  | { kind: 'refused'; failure: ErrorAnswer }
  | { kind: 'left-out' };
