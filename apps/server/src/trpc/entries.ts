import { type EntryOutcome, sendEntries } from '@rootclock/contracts';
import { type AnyTRPCRouter, callTRPCProcedure } from '@trpc/server';
import type * as z from 'zod/mini';
import { refuse } from '../refusal.ts';
import { errorAnswer } from './answer-error.ts';
import { parseInput } from './input.ts';
import { answered, checked, type RequestContext, signedIn, t } from './procedures.ts';

type SentEntry = z.output<typeof sendEntries>['entries'][number];

/** After this no further entry is begun, so that the answer reaches a browser that still waits for it. */
const BEGUN_WITHIN_MS = 8_000;

/** Entries that waited on a device, many in one request: each runs through its own procedure and transaction, and is answered by itself. */
export const entriesRouter = (features: AnyTRPCRouter) =>
  t.router({
    sendEntries: t.procedure.input(checked((raw) => parseInput(sendEntries, raw))).mutation(({ ctx, input, signal }) =>
      answered(async () => {
        signedIn(ctx);
        return { outcomes: await runInOrder(features, ctx, input.entries, signal) };
      }),
    ),
  });

async function runInOrder(
  features: AnyTRPCRouter,
  ctx: RequestContext,
  entries: readonly SentEntry[],
  signal: AbortSignal | undefined,
): Promise<EntryOutcome[]> {
  const outcomes: EntryOutcome[] = [];
  const notTaken = new Set<string>();
  const begunAt = performance.now();
  for (const entry of entries) {
    if (signal?.aborted || performance.now() - begunAt > BEGUN_WITHIN_MS) break;
    if (entry.after.some((id) => notTaken.has(id))) {
      notTaken.add(entry.commandId);
      outcomes.push({ kind: 'left-out' });
      continue;
    }
    try {
      // The first is counted with the request itself.
      if (outcomes.length > 0) await ctx.countCall?.();
      outcomes.push({ kind: 'answered', answer: (await run(features, ctx, entry, signal)) ?? null });
    } catch (error) {
      ctx.noteFailure?.(error, entry.name);
      const failure = errorAnswer(error, ctx.requestId);
      notTaken.add(entry.commandId);
      outcomes.push({ kind: 'refused', failure });
      if (holdsUp(failure)) break;
    }
  }
  return outcomes;
}

/** Whether what comes after an entry must wait with it: it may have taken effect or is sent again, or the session is not its person's. */
const holdsUp = ({ class: kind, code }: { class: string; code: string }): boolean =>
  kind === 'retry' || kind === 'fault' || code === 'not-signed-in' || code === 'another-person';

function run(
  features: AnyTRPCRouter,
  ctx: RequestContext,
  { name, commandId, personId, body }: SentEntry,
  signal: AbortSignal | undefined,
): Promise<unknown> {
  const procedure = Object.hasOwn(features._def.procedures, name) ? features._def.procedures[name] : undefined;
  // Passwords and sessions never wait on a device: what guesses at them comes alone.
  if (!procedure?._def.meta?.isEntry) refuse('not-found', { what: 'procedure' });
  return callTRPCProcedure({
    router: features,
    path: name,
    ctx,
    type: 'mutation',
    getRawInput: async () => ({ commandId, personId, body }),
    signal,
    batchIndex: 0,
  });
}
