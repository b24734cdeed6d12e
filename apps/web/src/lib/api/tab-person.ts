/**
 * Whose tab this is. Two people may share a browser, and with it the one cookie: what the server answers to another's session must not be shown here,
 * and what was typed here must not be sent under it. Nobody's tab (the door) takes every answer.
 */
let person: string | null = null;
const listeners = new Set<() => void>();

export const tabPerson = (): string | null => person;

export function giveTabTo(personId: string | null): void {
  person = personId;
}

/** Called when the server answered to somebody else's session. */
export function onAnotherPerson(listener: () => void): void {
  listeners.add(listener);
}

export function tellAnotherPerson(): void {
  for (const listener of listeners) listener();
}
