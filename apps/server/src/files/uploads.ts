import multipart from '@fastify/multipart';
import { MOST_FILE_BYTES, MOST_FILE_MEGABYTES } from '@rootclock/domain';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { requireRole, type Runner } from '../db/runner.ts';
import { addPaper } from '../features/files/commands/add-paper.ts';
import { addPhoto } from '../features/files/commands/add-photo.ts';
import { namePerson } from '../http/answer-headers.ts';
import { MOST_KILOBYTES, MOST_LEVELS } from '../http/bounds.ts';
import { isDeeper } from '../http/depth.ts';
import { OddRequest } from '../http/failures.ts';
import type { Sessions } from '../http/sessions.ts';
import { refuse } from '../refusal.ts';
import { parseEnvelope, personIn } from '../trpc/input.ts';
import type { Caller } from '../trpc/operation.ts';
import { Arrivals } from './arrivals.ts';

interface UploadParts {
  runner: Runner;
  sessions: Sessions;
}

const tooLarge = () => refuse('file-too-large', { mostMegabytes: MOST_FILE_MEGABYTES });
/** What a form is written in around its parts. */
const AROUND_BYTES = 4096;

/**
 * Commands that come with a file: a form of two parts, `entry` with the same JSON that procedures are sent and then `bytes`. All else is as with any command:
 * the session, whose entry it is, the role, the contract, the runner.
 */
export async function takeUploads(root: FastifyInstance, { runner, sessions }: UploadParts): Promise<void> {
  const arrivals = new Arrivals();
  await root.register(async (app) => {
    await app.register(multipart, {
      limits: {
        fileSize: MOST_FILE_BYTES,
        files: 1,
        fields: 1,
        fieldSize: MOST_KILOBYTES * 1024,
        parts: 2,
        headerPairs: 20,
      },
    });
    const take = (command: typeof addPhoto | typeof addPaper) =>
      app.post(`/files/${command === addPhoto ? 'photos' : 'papers'}`, async (request, reply) => {
        const caller = await sessions.callerOf(request);
        namePerson(reply, caller);
        if (!caller) refuse('not-signed-in', undefined);
        requireRole(command.roles, caller.role);
        if (Number(request.headers['content-length']) > MOST_FILE_BYTES + MOST_KILOBYTES * 1024 + AROUND_BYTES)
          tooLarge();
        return arrivals.take(caller.personId, async () => {
          const { commandId, body, inputHash } = parseEnvelope(command.input, await entryIn(request, caller));
          return runner.run(command, caller, commandId, body, await inputHash());
        });
      });
    take(addPhoto);
    take(addPaper);
  });
}

/** What procedures would be sent, with the file in its body. Whose entry it is comes first, and is asked before the file is taken in. */
async function entryIn(request: FastifyRequest, caller: Caller): Promise<unknown> {
  let entry: { body?: unknown } | undefined;
  let bytes: Buffer | undefined;
  for await (const part of request.parts()) {
    if (entry === undefined) {
      if (part.type !== 'field' || part.fieldname !== 'entry') throw new OddRequest(400);
      entry = entryOf(part.value);
      const personId = personIn(entry);
      if (personId !== undefined && personId !== caller.personId) refuse('another-person', undefined);
    } else {
      if (part.type !== 'file' || part.fieldname !== 'bytes') throw new OddRequest(400);
      bytes = await part.toBuffer().catch((error: { code?: string }) => {
        if (error.code === 'FST_REQ_FILE_TOO_LARGE') tooLarge();
        throw error;
      });
    }
  }
  if (!entry || !bytes) throw new OddRequest(400);
  const { body } = entry;
  return { ...entry, body: typeof body === 'object' && body !== null ? { ...body, bytes } : body };
}

function entryOf(text: unknown): { body?: unknown } {
  if (typeof text !== 'string' || isDeeper(text, MOST_LEVELS)) throw new OddRequest(400);
  try {
    const entry: unknown = JSON.parse(text);
    if (typeof entry === 'object' && entry !== null && !Array.isArray(entry)) return entry;
  } catch {
    // Answered below, as anything else that is no entry.
  }
  throw new OddRequest(400);
}
