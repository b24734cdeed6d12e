import type { FastifyInstance, FastifyRequest } from 'fastify';

/** A page of another site can make a browser send our cookie; SameSite stops most of that and this the rest. */
export function refuseForgery(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    if (request.method === 'GET' || request.method === 'HEAD') return;
    if (isForged(request)) await reply.code(403).send({ code: 'forged-request', message: 'forged-request', requestId: request.id });
    // The types that a form of another site could send are no JSON either.
    else if (!isJson(request)) await reply.code(415).send({ code: 'invalid-input', message: 'invalid-input', requestId: request.id });
  });
}

const isJson = (request: FastifyRequest) => /^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '');

function isForged(request: FastifyRequest): boolean {
  const site = request.headers['sec-fetch-site'];
  if (site && site !== 'same-origin' && site !== 'none') return true;
  const origin = request.headers.origin;
  if (!origin) return false;
  return !URL.canParse(origin) || new URL(origin).host !== request.headers.host;
}
