import { fastifyTRPCPlugin, type FastifyTRPCPluginOptions } from '@trpc/server/adapters/fastify';
import type { FastifyInstance } from 'fastify';
import type { Database } from '../db/pool.ts';
import type { Runner } from '../db/runner.ts';
import { appRouter, type AppRouter } from '../router.ts';
import { statusOf } from '../trpc/answer-error.ts';
import { answered, type RequestContext } from '../trpc/procedures.ts';
import { HeavyReads } from '../trpc/heavy-reads.ts';
import { askerOf } from './addresses.ts';
import { MOST_CALLS } from './bounds.ts';
import { refuseDepth } from './depth.ts';
import type { Sessions } from './sessions.ts';

interface ProcedureParts {
  runner: Runner;
  database: Database;
  sessions: Sessions;
  publicUrl: URL | undefined;
}

/** Every command and query, at /trpc. */
export async function serveProcedures(root: FastifyInstance, { runner, database, sessions, publicUrl }: ProcedureParts): Promise<void> {
  const heavyReads = new HeavyReads();
  await root.register(async (app) => {
    refuseDepth(app);
    await app.register(fastifyTRPCPlugin, {
      prefix: '/trpc',
      trpcOptions: {
        router: appRouter,
        maxBatchSize: MOST_CALLS,
        createContext: async ({ req, res }): Promise<RequestContext> => ({
          runner,
          database,
          caller: await answered(() => sessions.callerOf(req)),
          requestId: req.id,
          address: askerOf(req),
          heavyReads,
          publicOrigin: publicUrl?.origin,
          sessionToken: sessions.tokenOf(req),
          setSession: (token, expiresAt) => sessions.set(res, token, expiresAt),
        }),
        responseMeta: ({ data, errors }) => statusOf(errors, data.length),
        onError: ({ error, ctx, path: procedure }) => {
          const found = { err: error.cause ?? error, procedure, requestId: ctx?.requestId };
          if (error.code === 'INTERNAL_SERVER_ERROR') app.log.error(found, 'fault');
          else if (error.code === 'SERVICE_UNAVAILABLE') app.log.warn(found, 'outcome unknown');
        },
      } satisfies FastifyTRPCPluginOptions<AppRouter>['trpcOptions'],
    });
  });
}
