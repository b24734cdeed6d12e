/** What is in the outbox, for the shell's mark and the outbox page. */
import { useSyncExternalStore } from 'react';
import { outbox } from './browser-outbox.ts';

const followLine = (listener: () => void): (() => void) => {
  window.addEventListener('online', listener);
  window.addEventListener('offline', listener);
  return () => {
    window.removeEventListener('online', listener);
    window.removeEventListener('offline', listener);
  };
};

/** Whether the device believes to have a connection; the server may still be out of reach. */
export const useOnline = (): boolean => useSyncExternalStore(followLine, () => navigator.onLine);

export function useOutbox(personId: string | null) {
  const state = useSyncExternalStore(outbox.subscribe, outbox.snapshot);
  const own = state.queue.filter((entry) => entry.personId === personId);
  return {
    waiting: own.filter((entry) => !entry.parked),
    parked: own.filter((entry) => entry.parked),
    /** Entries of other people, kept for their next sign-in. */
    others: state.queue.length - own.length,
    /** The line is bad: an entry has been tried in vain. */
    stalled: own.some((entry) => !entry.parked && entry.tries > 0),
    isKnown: state.isKnown,
    signedOut: state.signedOut,
    lasting: state.lasting,
    sendingIds: state.sendingIds,
    sendAgain: (id: string) => void outbox.sendAgain(id),
    discard: (id: string) => void outbox.discard(id),
  };
}
