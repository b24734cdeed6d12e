import type { FastifyInstance, FastifyRequest } from 'fastify';
import { OddRequest } from './failures.ts';

const SERVED = new Set(['GET', 'HEAD', 'POST']);
/** Methods that only make sense between a client and a proxy, and were used to read headers back. */
const NEVER = new Set(['TRACE', 'CONNECT']);
const HOST = /^(\[[\da-f:.]{2,45}\]|[\w.-]{1,253})(:\d{1,5})?$/i;

/** Refuses what no browser sends, before anything believes it: other methods, and hosts that are missing, doubled or no names. */
export function refuseOddRequests(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    if (NEVER.has(request.method) || !hasOneHost(request)) throw new OddRequest(400);
    if (SERVED.has(request.method)) return;
    reply.header('allow', [...SERVED].join(', '));
    throw new OddRequest(405);
  });
}

function hasOneHost({ raw }: FastifyRequest): boolean {
  const hosts = raw.rawHeaders.filter((_, at) => at % 2 === 0 && raw.rawHeaders[at]?.toLowerCase() === 'host').length;
  // Who watches over a server may still speak the oldest version, which knows no hosts.
  if (hosts === 0) return raw.httpVersion === '1.0';
  return hosts === 1 && HOST.test(raw.headers.host ?? '');
}
