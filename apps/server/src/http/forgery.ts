import type { FastifyInstance, FastifyRequest } from 'fastify';
import { refuse } from '../refusal.ts';
import { OddRequest } from './failures.ts';

/** A page of another site can make a browser send our cookie; SameSite stops most of that and this the rest. */
export function refuseForgery(app: FastifyInstance, { publicUrl }: { publicUrl: URL | undefined }): void {
  app.addHook('onRequest', async (request) => {
    const isWrite = request.method === 'POST';
    // Reads through a link of another site would let it learn from their length.
    if ((isWrite || request.url.startsWith('/trpc/')) && isFromElsewhere(request)) refuse('forged-request', undefined);
    if (!isWrite) return;
    if (!isOurOrigin(request, publicUrl)) refuse('forged-request', undefined);
    // The types that a form of another site could send are no JSON either.
    if (!isJson(request) && !isUpload(request)) throw new OddRequest(415);
  });
}

/** A form with a file. One of another site could send it too, but not with a header of ours, for which its browser would first ask here. */
const UPLOAD_HEADER = 'rootclock-upload';
export const isUpload = ({ method, url, headers }: FastifyRequest) =>
  method === 'POST' &&
  url.startsWith('/files/') &&
  headers[UPLOAD_HEADER] !== undefined &&
  /^multipart\/form-data\s*;/i.test(headers['content-type'] ?? '');

const isJson = (request: FastifyRequest) => /^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '');

function isFromElsewhere({ headers }: FastifyRequest): boolean {
  const site = headers['sec-fetch-site'];
  return site !== undefined && site !== 'same-origin' && site !== 'none';
}

/** Our pages come from the public address, or from the host that was asked for, as far as trusted proxies tell. */
function isOurOrigin({ headers: { origin }, host: asked }: FastifyRequest, publicUrl: URL | undefined): boolean {
  if (origin === undefined) return true;
  if (!URL.canParse(origin)) return false;
  const { host } = new URL(origin);
  return host === publicUrl?.host ? origin === publicUrl.origin : host === asked;
}
