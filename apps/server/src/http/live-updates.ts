import type { FastifyInstance } from 'fastify';
import { Live } from '../live.ts';
import { refuse } from '../refusal.ts';
import type { Sessions } from './sessions.ts';

/** The stream of changes, at /live, for whoever is signed in. */
export function serveLive(app: FastifyInstance, { databaseUrl, sessions }: { databaseUrl: string; sessions: Sessions }): void {
  const live = new Live(databaseUrl, app);
  app.get('/live', async (request, reply) => {
    live.open((await sessions.callerOf(request)) ?? refuse('not-signed-in', undefined), reply);
    return reply;
  });
  app.addHook('onReady', () => live.start());
  app.addHook('preClose', () => live.stop());
}
