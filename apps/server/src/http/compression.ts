import compress from '@fastify/compress';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { callsOf } from './limits.ts';

/** Below this a header more costs as much as is saved. */
const WORTH_BYTES = 1024;
/** Texts. What streams is left alone, since it must go out at once, and what is packed already (printed pages) as well. */
const TEXTS = /^(application\/(manifest\+)?json|image\/svg\+xml|text\/(?!event-stream))/;

/**
 * How well an answer packs tells something of what is in it. Where it holds a secret beside words that another site can choose, such
 * telling adds up to the secret: so no answer to a command is packed, and none about people, their sessions and addresses.
 */
const mayTellSecrets = (request: FastifyRequest) =>
  request.method === 'POST' || callsOf(request).some((name) => name.startsWith('people.'));

/** Packs the texts among the answers. Files are packed once and for all by the build. */
export async function compressAnswers(app: FastifyInstance): Promise<void> {
  app.addHook('onRequest', async (request) => {
    if (mayTellSecrets(request)) request.headers['x-no-compression'] = 'secrets';
  });
  // Procedures answer a stream of one piece; as a text its length is known, and what is short stays as it is.
  app.addHook('onSend', async (_request, reply, payload) => {
    if (!(payload instanceof Response) || !payload.headers.get('content-type')?.startsWith('application/json'))
      return payload;
    reply.code(payload.status);
    for (const [name, value] of payload.headers) reply.header(name, value);
    return payload.text();
  });
  await app.register(compress, {
    global: true,
    threshold: WORTH_BYTES,
    encodings: ['br', 'gzip'],
    customTypes: TEXTS,
    globalDecompression: false,
  });
}
