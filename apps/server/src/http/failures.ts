import { randomUUID } from 'node:crypto';
import { STATUS_CODES, type ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import { ERRORS, type ErrorCode } from '@rootclock/contracts';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Refusal } from '../refusal.ts';
import { asRefusal } from '../trpc/answer-error.ts';
import { MOST_KILOBYTES } from './bounds.ts';

/** What any failure is answered with, but those of procedures, which tRPC wraps. */
export interface FailureAnswer {
  code: ErrorCode;
  message: ErrorCode;
  data: Record<string, unknown>;
  requestId: string;
}

interface Failure {
  status: number;
  refusal: Refusal;
}

/** A request that is none, whatever it asks for. */
export class OddRequest extends Error {
  override name = 'OddRequest';
  constructor(readonly statusCode: 400 | 405 | 415) {
    super('odd request');
  }
}

const unreadable = (status: number): Failure => ({
  status,
  refusal: new Refusal('invalid-input', { issues: [{ path: '', problem: 'wrong-form' }] }),
});
const ofRefusal = (refusal: Refusal): Failure => ({ status: ERRORS[refusal.code].status, refusal });

/** What our own code did not decide is told apart by its status: below 500 the request was at fault, and nothing more is told of it. */
function failureOf(error: unknown): Failure {
  const { statusCode = 0, code } = error as Partial<FastifyError>;
  if (code === 'FST_ERR_CTP_BODY_TOO_LARGE')
    return ofRefusal(new Refusal('body-too-large', { mostKilobytes: MOST_KILOBYTES }));
  const refusal = asRefusal(error);
  if (refusal.code !== 'fault' || statusCode < 400 || statusCode >= 500) return ofRefusal(refusal);
  // Files answer a path that leads out of their folder with 403.
  return statusCode === 403 || statusCode === 404 ? ofRefusal(notHere()) : unreadable(statusCode);
}

const answerOf = ({ refusal: { code, data } }: Failure, requestId: string): FailureAnswer => ({
  code,
  message: code,
  data: data ?? {},
  requestId,
});

export const notHere = () => new Refusal('not-found', { what: 'page' });

function answer(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const failure = failureOf(error);
  const { code } = failure.refusal;
  const found = { err: error, req: request, requestId: request.id };
  if (code === 'fault') request.log.error(found, 'fault');
  else if (code === 'outcome-unknown') request.log.warn(found, 'outcome unknown');
  return reply
    .code(failure.status)
    .type('application/json; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(answerOf(failure, request.id));
}

/** The one place where failures are answered: as JSON with a code, its data and the request's id, and never in the words of what failed. */
export function answerFailures(app: FastifyInstance): void {
  app.setErrorHandler(answer);
  // A proxy is asked for by this method, and without this the line would just end.
  app.server.on('connect', (_request, socket: Duplex) => endWith(socket, 400));
}

/** For an address that cannot be read, which no hook and no handler of ours sees. */
export const answerBadAddress = (error: FastifyError, request: FastifyRequest, reply: FastifyReply): void =>
  void answer(error, request, reply);

const UNREADABLE: Record<string, number> = { HPE_HEADER_OVERFLOW: 431, ERR_HTTP_REQUEST_TIMEOUT: 408 };

/**
 * For what could not even be read as a request, or did not arrive in time. The error itself is never logged, since it carries the raw
 * request with its cookies; nor is a line that was merely cut.
 */
export function answerUnreadable({ code }: Error & { code?: string }, socket: Duplex): void {
  if (code === 'ECONNRESET' || socket.destroyed) return;
  const begun = (socket as { _httpMessage?: ServerResponse | null })._httpMessage?.headersSent;
  if (begun) socket.destroy();
  else endWith(socket, UNREADABLE[code ?? ''] ?? 400);
}

function endWith(socket: Duplex, status: number): void {
  const body = JSON.stringify(answerOf(unreadable(status), randomUUID()));
  const head = [
    `HTTP/1.1 ${status} ${STATUS_CODES[status]}`,
    'Content-Type: application/json; charset=utf-8',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Cache-Control: no-store',
    'Connection: close',
  ];
  if (socket.writable) socket.end(`${head.join('\r\n')}\r\n\r\n${body}`, () => socket.destroy());
  else socket.destroy();
}
