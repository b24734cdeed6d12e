/**
 * Putting a refused entry right: the outbox page leads back to the screen it was typed on, whose form opens with the kept input. The
 * new entry then takes the old one's place, so that what depends on it follows.
 */
import type { CommandName } from '../api/commands.ts';
import { outbox } from './browser-outbox.ts';
import type { Entry } from './queue.ts';

const KEPT_AS = 'rootclock.mending';

export function startMending(id: string): void {
  sessionStorage.setItem(KEPT_AS, id);
}

/** Whether a form of this page is to put a refused entry right, so that its sheet opens at once. */
export const isMending = (name: CommandName): boolean => beingMended(name) !== null;

/** The address as entries keep it. */
export const addressNow = (): string => window.location.pathname + window.location.search;

/** The entry being put right, for the form it came from and no other: the same command, typed on this very page. */
export function beingMended(name: CommandName): Entry | null {
  const id = sessionStorage.getItem(KEPT_AS);
  return (
    outbox
      .snapshot()
      .queue.find((entry) => entry.id === id && entry.name === name && entry.from === addressNow() && entry.parked) ??
    null
  );
}
