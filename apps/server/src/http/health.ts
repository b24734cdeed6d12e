import type { FastifyInstance } from 'fastify';
import type { Database } from '../db/pool.ts';
import { isReady } from '../db/ready.ts';

/** For whatever watches over the server: that it lives, and that it can work. */
export function answerHealth(app: FastifyInstance, database: Database): void {
  // Asked every few seconds: a line a time would bury everything else.
  const quiet = { logLevel: 'warn' } as const;
  app.get('/health', quiet, async () => ({ live: true }));
  app.get('/ready', quiet, async (_request, reply) => {
    const ready = await isReady(database).catch(() => false);
    return reply.code(ready ? 200 : 503).send({ ready });
  });
}
