/** The stream of changes as the server's router declares it. */
import type { AppRouter } from '@rootclock/server/router';
import { createTRPCClient, httpSubscriptionLink } from '@trpc/client';
import type { LiveLineParts } from './line.ts';

/** An EventSource is handed in where a browser's own is not there. */
export function subscribeAt(url: string, source?: typeof EventSource): LiveLineParts['subscribe'] {
  const client = createTRPCClient<AppRouter>({
    links: [httpSubscriptionLink({ url, ...(source ? { EventSource: source } : {}) })],
  });
  return (take, lost) => {
    const { unsubscribe } = client.live.hearChanges.subscribe(undefined, {
      onData: take,
      onError: lost,
      onComplete: () => lost(null),
      // Browsers come back by themselves after some failures, always after the same pause; that is ended here, and the line's own pause counts.
      onConnectionStateChange: ({ state, error }) => {
        if (state === 'connecting' && error !== null) lost(error);
      },
    });
    return unsubscribe;
  };
}
