import type { FastifyInstance } from 'fastify';
import { Live } from '../live.ts';
import type { Sessions } from './sessions.ts';

/** The stream of changes, at /live, for whoever is signed in. */
export function serveLive(app: FastifyInstance, { databaseUrl, sessions }: { databaseUrl: string; sessions: Sessions }): void {
  const live = new Live(databaseUrl, app);
  app.get('/live', async (request, reply) => {
    const who = await sessions.callerOf(request);
    if (!who) return reply.code(401).send({ code: 'not-signed-in', message: 'not-signed-in', requestId: request.id });
    live.open(who, reply);
    return reply;
  });
  app.addHook('onReady', () => live.start());
  app.addHook('preClose', () => live.stop());
}
