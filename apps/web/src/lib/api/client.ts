/** The way to the server: reads travel in batches, commands one by one and in order, each with a time limit. */
import type { AppRouter } from '@rootclock/server/router';
import type { EntryOutcome } from '@rootclock/contracts';
import { createTRPCClient, getUntypedClient, httpBatchLink, httpLink, splitLink } from '@trpc/client';
import { createTRPCOptionsProxy } from '@trpc/tanstack-react-query';
import { CommandError, NO_ANSWER } from './failure.ts';
import { heardFetch } from './heard-fetch.ts';
import { queryClient } from './query-client.ts';
import { tabPerson } from './tab-person.ts';

const URL = '/trpc';

/** Longer than the server begins entries of one request. */
const ENTRIES_LIMIT_MS = 30_000;
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
      true: httpLink({ url: URL, fetch: heardFetch }),
      false: httpBatchLink({ url: URL, maxURLLength: ADDRESS_LIMIT, maxItems: MOST_CALLS, fetch: heardFetch }),
    }),
  ],
});

/** `useQuery(trpc.people.me.queryOptions())`: the typed way to every read. */
export const trpc = createTRPCOptionsProxy<AppRouter>({ client, queryClient });

/**
 * Sends one command of a person, or of nobody yet. Rejects with the client's error, which `readFailure` reads. Our server always answers something:
 * a success without anything in it is somebody else's JSON that happens to look like one.
 */
export async function sendCommand(
  name: string,
  commandId: string,
  body: unknown,
  personId = tabPerson() ?? undefined,
): Promise<unknown> {
  const answer = await getUntypedClient(client).mutation(
    name,
    { commandId, personId, body },
    { signal: AbortSignal.timeout(COMMAND_LIMIT_MS) },
  );
  if (answer === undefined) throw new CommandError(NO_ANSWER);
  return answer;
}

interface SentEntry {
  id: string;
  name: string;
  body: unknown;
  personId: string;
  after: readonly string[];
}

/** Sends several commands in one request, each answered by itself. Rejects where the request as a whole got no answer of ours. */
export async function sendEntries(entries: readonly SentEntry[]): Promise<readonly EntryOutcome[]> {
  const answer = await client.outbox.sendEntries.mutate(
    {
      entries: entries.map(({ id, name, body, personId, after }) => ({
        commandId: id,
        name,
        body,
        personId,
        after: [...after],
      })),
    },
    { signal: AbortSignal.timeout(ENTRIES_LIMIT_MS) },
  );
  // A server that could not begin a single one says so by an empty list.
  if (!Array.isArray(answer?.outcomes) || answer.outcomes.length === 0) throw new CommandError(NO_ANSWER);
  return answer.outcomes.map((outcome) =>
    outcome.kind === 'answered' ? { ...outcome, answer: outcome.answer ?? null } : outcome,
  );
}
