import { initTRPC, type TRPCMutationProcedure, type TRPCQueryProcedure } from '@trpc/server';
import type * as z from 'zod/mini';
import type { Database } from '../db/pool.ts';
import { requireRole, type Runner } from '../db/runner.ts';
import type { Hearing } from '../live/serve-live.ts';
import { Refusal, refuse } from '../refusal.ts';
import { errorAnswer, toTrpcError } from './answer-error.ts';
import type { Door } from './door.ts';
import type { HeavyReads } from './heavy-reads.ts';
import { parseEnvelope, parseInput, personIn } from './input.ts';
import type { Caller, Command, Operation, Query } from './operation.ts';

/** What a request brings to its procedures. */
export interface RequestContext {
  runner: Runner;
  database: Database;
  caller: Caller | null;
  requestId: string;
  /** The address that asks, for slowing down guessed sign-ins. */
  address: string;
  /** Where people reach the server, when that is set. */
  publicOrigin?: string | undefined;
  /** What bounds heavy reads; callers inside the server, who wait for each answer, have none. */
  heavyReads?: HeavyReads;
  /** Whether the request carries more calls than this one, or could. */
  isBatch: boolean;
  door: Door;
  /** How a page hears of changes; procedures that are called within the server hear nothing. */
  hearing?: Hearing;
  /** Counts one call more of this request, and refuses when its address has made too many; nothing is counted within the server. */
  countCall?: () => Promise<void>;
  /** Writes down what failed within a request that is answered all the same. */
  noteFailure?: (error: unknown, procedure: string) => void;
}

/** What is said of a procedure beside its types. */
interface ProcedureMeta {
  /** Takes effect once by its command id, so that it may wait on a device and be sent in one request with others. */
  isEntry: boolean;
}

export const t = initTRPC
  .context<RequestContext>()
  .meta<ProcedureMeta>()
  .create({
    errorFormatter: ({ shape, error, ctx }) => {
      const data = errorAnswer(error, ctx?.requestId ?? '');
      return { ...shape, message: data.code, data };
    },
  });

const answered = async <Answer>(work: () => Promise<Answer>): Promise<Answer> => {
  try {
    return await work();
  } catch (error) {
    throw toTrpcError(error);
  }
};

const checked =
  <Parsed>(parse: (raw: unknown) => Parsed) =>
  (raw: unknown): Parsed => {
    try {
      return parse(raw);
    } catch (error) {
      throw toTrpcError(error);
    }
  };

function signedIn(context: RequestContext): Caller {
  if (!context.caller) refuse('not-signed-in', undefined);
  return context.caller as Caller;
}

/** Who is signed in, provided that what was sent is theirs: two people may share a browser, and with it the cookie. */
function signedInAs(context: RequestContext, personId: string | undefined): Caller {
  const caller = signedIn(context);
  if (personId !== undefined && personId !== caller.personId) refuse('another-person', undefined);
  return caller;
}

/** Asked before the input is even read: whoever may not learns nothing about what would have been accepted. */
function allowed(context: RequestContext, operation: Operation, personId?: string): Caller {
  const caller = signedInAs(context, personId);
  requireRole(operation.roles, caller.role);
  return caller;
}

type ProcedureOf<Op> =
  Op extends Command<infer Input, infer Answer, infer _Prepared>
    ? TRPCMutationProcedure<{
        input: { commandId: string; personId?: string; body: z.input<Input> };
        output: Answer;
        meta: unknown;
      }>
    : Op extends Query<infer Input, infer Answer, infer _Loaded>
      ? TRPCQueryProcedure<{ input: z.input<Input>; output: Answer; meta: unknown }>
      : never;

function procedureOf(operation: Operation) {
  if (operation.kind === 'command') {
    return t.procedure
      .meta({ isEntry: true })
      .input(checked((raw) => ({ raw })))
      .mutation(({ ctx, input }) =>
        answered(async () => {
          const caller = allowed(ctx, operation, personIn(input.raw));
          const { commandId, body, inputHash } = parseEnvelope(operation.input, input.raw);
          return ctx.runner.run(operation, caller, commandId, body, await inputHash());
        }),
      );
  }
  return t.procedure.input(checked((raw) => ({ raw }))).query(({ ctx, input, signal }) =>
    answered(async () => {
      const caller = allowed(ctx, operation);
      const asked = parseInput(operation.input, input.raw ?? {});
      const read = () => ctx.runner.read(operation, caller, asked);
      return operation.isHeavy && ctx.heavyReads ? ctx.heavyReads.inTurn(caller.personId, read, signal) : read();
    }),
  );
}

/** Turns a feature's operations into its router; each procedure is named as its operation. */
export function featureRouter<Operations extends Record<string, Operation>>(operations: Operations) {
  const procedures = Object.fromEntries(
    Object.entries(operations).map(([name, operation]) => [name, procedureOf(operation)]),
  );
  return t.router(procedures as unknown as { [Name in keyof Operations]: ProcedureOf<Operations[Name]> });
}

/** For the few procedures that work before anyone is signed in. */
export const openProcedure = t.procedure;
/** For those that a secret could be guessed with: one guess a request, so that limits of requests are limits of guesses. */
export const aloneProcedure = t.procedure.use(({ ctx, next }) => {
  if (ctx.isBatch) throw toTrpcError(new Refusal('not-in-a-batch'));
  return next();
});
export { answered, checked, signedIn, signedInAs };
export const createCallerFactory = t.createCallerFactory;
