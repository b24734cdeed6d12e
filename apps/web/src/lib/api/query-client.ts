/** The cache of reads. It believes an answer until the live stream says that its feature changed. */
import { QueryCache, QueryClient } from '@tanstack/react-query';
import { keptReads } from '../kept-reads/index.ts';
import { readFailure } from './failure.ts';

const FRESH_MS = 60_000;
const MOST_TRIES = 3;

const signedOut = new Set<() => void>();

/** Called when a read learns that the session is over. */
export function onSignedOut(listener: () => void): () => void {
  signedOut.add(listener);
  return () => signedOut.delete(listener);
}

export const queryClient = new QueryClient({
  queryCache: new QueryCache({
    onError: (error) => {
      if (readFailure(error).code === 'not-signed-in') for (const listener of signedOut) listener();
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: FRESH_MS,
      // Only an unanswered read is worth asking again: a refusal stays one.
      retry: (tries, error) => tries < MOST_TRIES && readFailure(error).class === 'retry',
      // A read on a bad line should fail into the screen's own words and not wait for the browser to believe in a network.
      networkMode: 'always',
      persister: keptReads.persister,
    },
  },
});
