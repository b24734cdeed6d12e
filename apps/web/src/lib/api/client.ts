/** The way to the server: reads travel in batches, commands one by one and in order, each with a time limit. */
import type { AppRouter } from '@rootclock/server/router';
import { createTRPCClient, getUntypedClient, httpBatchLink, httpLink, splitLink } from '@trpc/client';
import { createTRPCOptionsProxy } from '@trpc/tanstack-react-query';
import { queryClient } from './query-client.ts';

const URL = '/trpc';

/** After this a command counts as unanswered and is sent again with its id; the server may still be busy with it. */
const COMMAND_LIMIT_MS = 20_000;
/** Reads with long inputs would make addresses that proxies refuse. */
const ADDRESS_LIMIT = 6000;
/** More the server takes in no batch. */
const MOST_CALLS = 20;

const client = createTRPCClient<AppRouter>({
  links: [
    splitLink({
      condition: (operation) => operation.type === 'mutation',
      true: httpLink({ url: URL }),
      false: httpBatchLink({ url: URL, maxURLLength: ADDRESS_LIMIT, maxItems: MOST_CALLS }),
    }),
  ],
});

/** `useQuery(trpc.people.me.queryOptions())`: the typed way to every read. */
export const trpc = createTRPCOptionsProxy<AppRouter>({ client, queryClient });

/** Sends one command. Rejects with the client's error, which `readFailure` reads. */
export function sendCommand(name: string, commandId: string, body: unknown): Promise<unknown> {
  return getUntypedClient(client).mutation(name, { commandId, body }, { signal: AbortSignal.timeout(COMMAND_LIMIT_MS) });
}
