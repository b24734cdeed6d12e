import type { FastifyInstance, FastifyRequest } from 'fastify';
import { MOST_LEVELS } from './bounds.ts';
import { OddRequest } from './failures.ts';

/** Whether a text, read as JSON, opens more than `most` levels. It need not be JSON. */
export function isDeeper(text: string, most: number): boolean {
  let levels = 0;
  let inText = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (inText) {
      if (sign === '\\') at += 1;
      else if (sign === '"') inText = false;
    } else if (sign === '"') inText = true;
    else if (sign === '[' || sign === '{') levels += 1;
    else if (sign === ']' || sign === '}') levels -= 1;
    if (levels > most) return true;
  }
  return false;
}

const sentIn = ({ body, query }: FastifyRequest) =>
  [body, (query as { input?: unknown }).input].filter((text) => typeof text === 'string');

/** Refuses what is sent to procedures and is nested beyond reason, before it is parsed: what walks through it would run out of stack. */
export function refuseDepth(app: FastifyInstance): void {
  app.addHook('preHandler', async (request) => {
    if (sentIn(request).some((text) => isDeeper(text, MOST_LEVELS))) throw new OddRequest(400);
  });
}
