import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

/** What browsers are told to keep from us and from our pages. On plain http nothing may be raised to https, or no page would load. */
export async function sendSecurityHeaders(app: FastifyInstance, { secure }: { secure: boolean }): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        'default-src': ["'self'"],
        'style-src': ["'self'", "'unsafe-inline'"],
        // What a person has just chosen is shown before it is sent.
        'img-src': ["'self'", 'data:', 'blob:'],
        'worker-src': ["'self'"],
        'manifest-src': ["'self'"],
        'upgrade-insecure-requests': null,
      },
    },
    // Our own name alone: what else stands under it is not ours to decide on.
    hsts: secure && { includeSubDomains: false },
  });
}
