/**
 * Putting a refused entry right: the outbox page leads back to the screen it was typed on, whose form opens with the kept input. The
 * new entry then takes the old one's place, so that what depends on it follows.
 */
import type { CommandBody, CommandName } from '../api/commands.ts';
import { outbox } from './browser-outbox.ts';

const KEPT_AS = 'rootclock.mending';

export function startMending(id: string): void {
  sessionStorage.setItem(KEPT_AS, id);
}

function mending(name: CommandName) {
  const id = sessionStorage.getItem(KEPT_AS);
  return outbox.snapshot().queue.find((entry) => entry.id === id && entry.name === name && entry.parked) ?? null;
}

/** The kept input of the entry that is being put right, for a form's initial values; null in the ordinary case. */
export function keptInput<Name extends CommandName>(name: Name): CommandBody<Name> | null {
  return (mending(name)?.body as CommandBody<Name> | undefined) ?? null;
}

/** The entry that the next send of this command replaces; it is handed out once. */
export function takeMending(name: CommandName): { id: string; creates: readonly string[] } | null {
  const entry = mending(name);
  if (entry) sessionStorage.removeItem(KEPT_AS);
  return entry && { id: entry.id, creates: entry.creates };
}
