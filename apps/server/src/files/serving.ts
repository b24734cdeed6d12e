import { FILE_SIZES, type FileSize } from '@rootclock/domain';
import type { FastifyInstance } from 'fastify';
import type { Runner } from '../db/runner.ts';
import { readFileOf } from '../features/files/reads.ts';
import { notHere } from '../http/failures.ts';
import type { Sessions } from '../http/sessions.ts';
import { refuse } from '../refusal.ts';
import type { FileStore } from './file-store.ts';

interface ServingParts {
  runner: Runner;
  sessions: Sessions;
  files: FileStore;
}

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const isSize = (word: string): word is FileSize => (FILE_SIZES as readonly string[]).includes(word);

/** What stands behind an address never changes, but whoever may see it does, and what was blanked must fade: so a browser keeps it for a day. */
const KEPT_SECONDS = 24 * 60 * 60;

/** Photos and papers, each read through the row that names it: whoever may not read that row finds nothing here. */
export function serveFiles(app: FastifyInstance, { runner, sessions, files }: ServingParts): void {
  app.get<{ Params: { id: string; size: string } }>('/files/:id/:size', async (request, reply) => {
    const caller = (await sessions.callerOf(request)) ?? refuse('not-signed-in', undefined);
    const { id, size } = request.params;
    if (!ID.test(id) || !isSize(size)) throw notHere();
    const file = await runner.read(readFileOf, caller, { attachmentId: id, size });
    const bytes = await files.read(caller.nurseryId, file.sha256);
    if (bytes === null) throw new Error(`the store has lost ${file.sha256} of nursery ${caller.nurseryId}`);
    reply
      .type(file.mediaType)
      .header('cache-control', `private, max-age=${KEPT_SECONDS}, immutable`)
      .header('vary', 'cookie')
      .header('x-content-type-options', 'nosniff');
    // A paper was made by anybody: it is saved, and if a browser shows it all the same it can do nothing.
    if (!file.mediaType.startsWith('image/'))
      reply
        .header('content-disposition', `attachment; filename="paper-${file.takenOn}.pdf"`)
        .header('content-security-policy', "default-src 'none'; sandbox");
    return reply.send(bytes);
  });
}
