import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Runner } from '../db/runner.ts';
import { readProtocolPaper } from '../features/propagation/protocols/page/read-protocol-paper.ts';
import { parseInput } from '../trpc/input.ts';
import type { Caller } from '../trpc/operation.ts';
import { refuse } from '../refusal.ts';
import { protocolPage } from './protocols/page.ts';
import { type PaperLanguage, protocolWords } from './protocols/words.ts';

export interface PaperParts {
  runner: Runner;
  callerOf: (request: FastifyRequest) => Promise<Caller | null>;
}

const languageOf = (asked: unknown): PaperLanguage =>
  typeof asked === 'string' && Object.hasOwn(protocolWords, asked) ? (asked as PaperLanguage) : 'en';

/** Pages to print, for whoever is signed in. They have addresses of their own, so that a browser shows, saves and prints them as it does any file. */
export function servePaper(app: FastifyInstance, { runner, callerOf }: PaperParts): void {
  const page = async (
    request: FastifyRequest,
    reply: FastifyReply,
    draw: (caller: Caller) => Promise<{ name: string; bytes: Uint8Array }>,
  ) => {
    const caller = (await callerOf(request)) ?? refuse('not-signed-in', undefined);
    const { name, bytes } = await draw(caller);
    return reply
      .header('content-type', 'application/pdf')
      .header('content-disposition', `inline; filename="${name}.pdf"`)
      .send(bytes);
  };

  app.get<{ Params: { file: string }; Querystring: { language?: string } }>(
    '/paper/protocols/:file',
    (request, reply) =>
      page(request, reply, async (caller) => {
        const [, versionId] = /^([0-9a-f-]{36})\.pdf$/.exec(request.params.file) ?? [];
        if (versionId === undefined) refuse('not-found', { what: 'page' });
        const read = await runner.read(readProtocolPaper, caller, parseInput(readProtocolPaper.input, { versionId }));
        const bytes = await protocolPage({
          ...read,
          language: languageOf(request.query.language),
          madeAt: runner.clock(),
        });
        return { name: `${read.protocol.plant.code}-${read.protocol.method}-${read.protocol.version.number}`, bytes };
      }),
  );
}
