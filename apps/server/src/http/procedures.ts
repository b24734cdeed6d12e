import { fastifyTRPCPlugin, type FastifyTRPCPluginOptions } from '@trpc/server/adapters/fastify';
import type { FastifyInstance } from 'fastify';
import type { Database } from '../db/pool.ts';
import type { Runner } from '../db/runner.ts';
import { appRouter, type AppRouter } from '../router.ts';
import { statusOf } from '../trpc/answer-error.ts';
import { answered, type RequestContext } from '../trpc/procedures.ts';
import type { Sessions } from './sessions.ts';

/** Every command and query, at /trpc. */
export async function serveProcedures(app: FastifyInstance, { runner, database, sessions }: { runner: Runner; database: Database; sessions: Sessions }): Promise<void> {
  await app.register(fastifyTRPCPlugin, {
    prefix: '/trpc',
    trpcOptions: {
      router: appRouter,
      createContext: async ({ req, res }): Promise<RequestContext> => ({
        runner,
        database,
        caller: await answered(() => sessions.callerOf(req)),
        requestId: req.id,
        address: req.ip,
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
}
