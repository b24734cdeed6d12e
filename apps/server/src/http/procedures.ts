import type { TRPCError } from '@trpc/server';
import { fastifyTRPCPlugin, type FastifyTRPCPluginOptions } from '@trpc/server/adapters/fastify';
import type { FastifyInstance } from 'fastify';
import type { Database } from '../db/pool.ts';
import type { Runner } from '../db/runner.ts';
import type { HearingOf } from '../live/serve-live.ts';
import { appRouter, type AppRouter } from '../router.ts';
import { statusOf, toTrpcError } from '../trpc/answer-error.ts';
import { answered, type RequestContext } from '../trpc/procedures.ts';
import { HeavyReads } from '../trpc/heavy-reads.ts';
import { askerOf } from './addresses.ts';
import { namePerson } from './answer-headers.ts';
import { MOST_CALLS } from './bounds.ts';
import { refuseDepth } from './depth.ts';
import type { CountCall } from './limits.ts';
import type { Sessions } from './sessions.ts';

interface ProcedureParts {
  runner: Runner;
  database: Database;
  sessions: Sessions;
  hearing: HearingOf;
  publicUrl: URL | undefined;
  countCall: CountCall;
}

/** Every command and query, at /trpc. */
export async function serveProcedures(
  root: FastifyInstance,
  { runner, database, sessions, hearing, publicUrl, countCall }: ProcedureParts,
): Promise<void> {
  const heavyReads = new HeavyReads();
  const noteFailure = (error: TRPCError, procedure: string | undefined, requestId: string | undefined) => {
    const found = { err: error.cause ?? error, procedure, requestId };
    if (error.code === 'INTERNAL_SERVER_ERROR') root.log.error(found, 'fault');
    else if (error.code === 'SERVICE_UNAVAILABLE') root.log.warn(found, 'outcome unknown');
  };
  await root.register(async (app) => {
    refuseDepth(app);
    await app.register(fastifyTRPCPlugin, {
      prefix: '/trpc',
      trpcOptions: {
        router: appRouter,
        maxBatchSize: MOST_CALLS,
        createContext: async ({ req, res, info }): Promise<RequestContext> => ({
          runner,
          database,
          caller: await answered(async () => {
            const caller = await sessions.callerOf(req);
            namePerson(res, caller);
            return caller;
          }),
          requestId: req.id,
          address: askerOf(req),
          heavyReads,
          hearing: hearing(() => sessions.callerOf(req), res),
          publicOrigin: publicUrl?.origin,
          isBatch: info.isBatchCall,
          door: sessions.doorOf(req, res),
          countCall: () => countCall(req, res),
          noteFailure: (error, procedure) => noteFailure(toTrpcError(error), procedure, req.id),
        }),
        responseMeta: ({ data, errors }) => statusOf(errors, data.length),
        onError: ({ error, ctx, path: procedure }) => noteFailure(error, procedure, ctx?.requestId),
      } satisfies FastifyTRPCPluginOptions<AppRouter>['trpcOptions'],
    });
  });
}
