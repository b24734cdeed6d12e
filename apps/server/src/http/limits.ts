import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';

/** How much one address may ask of all interfaces together; what watches over the server is never turned away. */
export async function limitRequests(app: FastifyInstance, { requestsAMinute }: { requestsAMinute: number }): Promise<void> {
  await app.register(rateLimit, { max: requestsAMinute, timeWindow: '1 minute', allowList: (request) => request.url.startsWith('/health') });
}
