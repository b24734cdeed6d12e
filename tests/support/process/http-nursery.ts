// A nursery worked from outside, over HTTP alone, as browsers do: for tests whose server may die at any moment.
import { randomUUID } from 'node:crypto';
import { readFailure } from '../../../apps/web/src/lib/api/failure.ts';

export type HttpAnswer =
  | { kind: 'done'; answer: unknown }
  | { kind: 'refused'; code: string }
  /** The connection broke, the server is closing, or it said itself that it does not know. */
  | { kind: 'unknown' };

export interface HttpCommand {
  id: string;
  procedure: string;
  body: unknown;
}

export const command = (procedure: string, body: unknown): HttpCommand => ({ id: randomUUID(), procedure, body });

interface Wire {
  result?: { data: unknown };
  error?: { data?: { code?: string } };
}

export async function send(
  address: string,
  cookie: string,
  { id, procedure, body }: HttpCommand,
): Promise<HttpAnswer & { cookie?: string }> {
  try {
    const response = await fetch(`${address}/trpc/${procedure}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie },
      body: JSON.stringify({ commandId: id, body }),
      signal: AbortSignal.timeout(30_000),
    });
    const { result, error } = (await response.json()) as Wire;
    if (result) return { kind: 'done', answer: result.data, cookie: response.headers.get('set-cookie')?.split(';')[0] };
    // A server that is closing answers in words that are not ours: what those mean is read as a browser reads it.
    const failure = readFailure({ data: error?.data, meta: { response } });
    return failure.class === 'retry' ? { kind: 'unknown' } : { kind: 'refused', code: failure.code };
  } catch {
    return { kind: 'unknown' };
  }
}

export async function ask<Answer>(
  address: string,
  cookie: string,
  procedure: string,
  input: unknown = {},
): Promise<Answer> {
  const response = await fetch(`${address}/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`, {
    headers: { cookie },
  });
  const { result, error } = (await response.json()) as Wire;
  if (!result) throw new Error(`${procedure} answered ${error?.data?.code ?? response.status}`);
  return result.data as Answer;
}

/** As `send`, for what must succeed. */
export async function must(
  address: string,
  cookie: string,
  wanted: HttpCommand,
): Promise<{ answer: unknown; cookie: string }> {
  const outcome = await send(address, cookie, wanted);
  if (outcome.kind !== 'done')
    throw new Error(`${wanted.procedure} was ${outcome.kind} ${outcome.kind === 'refused' ? outcome.code : ''}`);
  return { answer: outcome.answer, cookie: outcome.cookie ?? cookie };
}
