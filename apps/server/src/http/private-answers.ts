import type { FastifyInstance } from 'fastify';

/** Nothing is kept, by browsers or by what stands between, unless its route says how long it may be. */
export function keepAnswersPrivate(app: FastifyInstance): void {
  app.addHook('onRequest', async (_request, reply) => void reply.header('cache-control', 'no-store'));
}
