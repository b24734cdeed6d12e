/** A day that stays filled in for the next entry, with the day on which it was kept: what was typed yesterday must not slip into today. */
import { isText } from './remember.ts';

export interface KeptDay {
  on: string;
  today: string;
}

export const isKeptDay = (kept: unknown): kept is KeptDay =>
  typeof kept === 'object' && kept !== null && 'on' in kept && 'today' in kept && isText(kept.on) && isText(kept.today);

/** The day that a form begins with. */
export const dayToBegin = (kept: KeptDay, today: string): string => (kept.today === today ? kept.on : today);

/**
 * The day of an entry that the server has answered now, made in a form that was opened on `openedOn`. What was today while the form was open is kept as
 * of itself, since the answer may come after midnight.
 */
export const keptLate = (on: string, openedOn: string, today: string): KeptDay => ({
  on,
  today: on >= openedOn ? on : today,
});
