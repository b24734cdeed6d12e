import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { refuse } from '../refusal.ts';
import { askerOf } from './addresses.ts';

/** Whoever watches over the server is never turned away. */
const isWatching = ({ url }: FastifyRequest) => url === '/health' || url === '/ready';

/** The procedures that a request calls: they stand in its address with commas between, however these are written. */
export const callsOf = ({ params }: FastifyRequest): string[] =>
  ((params as { path?: string } | null)?.path ?? '').split(',');

/** Counts a call that its request's address does not name, as one entry of several in a body. */
export type CountCall = (request: FastifyRequest, reply: FastifyReply) => Promise<void>;

/** How much one address may ask of all interfaces together, counted in calls before anything is looked up or hashed for them. */
export function limitCalls(app: FastifyInstance, { callsAMinute }: { callsAMinute: number }): CountCall {
  const limiter = new RateLimiterMemory({ points: callsAMinute, duration: 60 });
  const count = async (request: FastifyRequest, reply: FastifyReply, calls: number) => {
    const left = await limiter.consume(askerOf(request), calls).catch((error: unknown) => {
      if (error instanceof RateLimiterRes) return error;
      throw error;
    });
    reply.header('x-ratelimit-limit', callsAMinute).header('x-ratelimit-remaining', Math.max(0, left.remainingPoints));
    if (left.consumedPoints <= callsAMinute) return;
    const waitSeconds = Math.max(1, Math.ceil(left.msBeforeNext / 1000));
    reply.header('retry-after', waitSeconds);
    refuse('too-many-requests', { waitSeconds });
  };
  app.addHook('onRequest', async (request, reply) => {
    if (!isWatching(request)) await count(request, reply, callsOf(request).length);
  });
  return (request, reply) => count(request, reply, 1);
}
