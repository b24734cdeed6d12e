/**
 * What stays filled in: the last place, lot and day of a potting session, so that a further lot costs few taps. A session's memory
 * ends with the tab, and with the person who works in it; a device's memory stays. A day is remembered by `useEntryDay` alone.
 */
import { useCallback, useState } from 'react';

const PREFIX = 'rootclock.last.';

function read(store: Storage, key: string): unknown {
  const text = store.getItem(PREFIX + key);
  if (text === null) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    // Something else wrote here; what was remembered is lost and nothing more.
    return undefined;
  }
}

/** A value that this tab remembers under a key, such as `potting.place`; `isValue` guards against what older versions kept. */
export function useRemembered<Value>(
  key: string,
  initial: Value,
  isValue: (kept: unknown) => kept is Value,
): [Value, (value: Value) => void] {
  const [value, setValue] = useState<Value>(() => {
    const kept = read(sessionStorage, key);
    return isValue(kept) ? kept : initial;
  });
  const keep = useCallback(
    (next: Value) => {
      sessionStorage.setItem(PREFIX + key, JSON.stringify(next));
      setValue(next);
    },
    [key],
  );
  return [value, keep];
}

/** Whose session's memory this tab holds. What one person typed last is nothing for the next. */
export function rememberFor(personId: string): void {
  const owner = 'rootclock.memory-of';
  if (sessionStorage.getItem(owner) === personId) return;
  sessionStorage.clear();
  sessionStorage.setItem(owner, personId);
}

export const isText = (kept: unknown): kept is string => typeof kept === 'string';

/** Choices of the device itself, such as its theme. */
export const onDevice = {
  read: (key: string): unknown => read(localStorage, key),
  keep: (key: string, value: unknown): void => localStorage.setItem(PREFIX + key, JSON.stringify(value)),
};
