import { Socket } from 'node:net';
import type { FastifyInstance } from 'fastify';
import { answerUnreadable } from './failures.ts';
import { isUpload } from './forgery.ts';

/** A photo over a rural line takes minutes, all else that is sent is small. */
const UPLOADS_TAKE_TIMES = 6;

/** What Node itself waits for a request, which it can be told for all of them alike only. */
export const longestPatience = (patienceMs: number): number => patienceMs * UPLOADS_TAKE_TIMES;

/** Cuts whoever sends too slowly, but for files. */
export function limitPatience(app: FastifyInstance, { patienceMs }: { patienceMs: number }): void {
  app.addHook('onRequest', async (request) => {
    const { raw } = request;
    const hasBody = raw.headers['transfer-encoding'] !== undefined || Number(raw.headers['content-length']) > 0;
    if (!hasBody || isUpload(request)) return;
    const timer = setTimeout(() => {
      const late = Object.assign(new Error('a request that did not arrive in time'), {
        code: 'ERR_HTTP_REQUEST_TIMEOUT',
      });
      // A request put in from within the server has no line that could be cut.
      if (!raw.complete && raw.socket instanceof Socket) answerUnreadable(late, raw.socket);
    }, patienceMs).unref();
    // Such a request ends and never closes.
    for (const over of ['end', 'close']) raw.once(over, () => clearTimeout(timer));
  });
}
