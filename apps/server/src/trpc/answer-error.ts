import { ERRORS, type ErrorAnswer, type ErrorCode } from '@rootclock/contracts';
import { InputError } from '@rootclock/domain';
import { TRPCError } from '@trpc/server';
import { databaseFailure, isOutcomeUnknown } from '../db/failure.ts';
import { Refusal } from '../refusal.ts';

type TrpcCode = ConstructorParameters<typeof TRPCError>[0]['code'];
const TRPC_CODE: Record<number, TrpcCode> = {
  400: 'BAD_REQUEST',
  401: 'UNAUTHORIZED',
  403: 'FORBIDDEN',
  404: 'NOT_FOUND',
  409: 'CONFLICT',
  422: 'UNPROCESSABLE_CONTENT',
  429: 'TOO_MANY_REQUESTS',
  500: 'INTERNAL_SERVER_ERROR',
  503: 'SERVICE_UNAVAILABLE',
};

/** Laws that the database refused by name, and the error a person sees when no command noticed first. */
const BY_CONSTRAINT: Record<string, ErrorCode> = {
  entry_reverses_key: 'already-reversed',
  reversal_is_final: 'reversal-is-final',
  client_is_blanked: 'client-blanked',
};

/** Any failure as one of the table's errors. What is not expected becomes a fault that tells only its request id. */
export function asRefusal(error: unknown): Refusal {
  if (error instanceof Refusal) return error;
  if (error instanceof TRPCError) return asRefusalOfTrpc(error);
  if (error instanceof InputError)
    return new Refusal(
      'invalid-input',
      { issues: [{ path: error.argument, problem: 'wrong-form' }], detail: error.message },
      error.argument,
    );
  const failure = databaseFailure(error);
  if (failure) {
    const named = BY_CONSTRAINT[failure.constraint];
    if (named) return new Refusal(named, {});
    if (failure.sqlState === '23505') return new Refusal('id-taken', { what: failure.constraint });
    if (failure.sqlState === '23503') return new Refusal('not-found', { what: 'row' });
    if (
      failure.sqlState === '22P02' ||
      failure.sqlState === '22003' ||
      failure.sqlState === '22008' ||
      failure.sqlState === '22021'
    ) {
      return new Refusal('invalid-input', { issues: [{ path: '', problem: 'wrong-form' }] });
    }
  }
  return isOutcomeUnknown(error) ? new Refusal('outcome-unknown', {}, undefined, error) : new Refusal('fault', {});
}

/** What tRPC turns away by itself, before any procedure: no JSON, no such procedure, a read asked for as a write. */
const BY_TRPC: Partial<Record<TrpcCode, Refusal>> = {
  PARSE_ERROR: new Refusal('invalid-input', { issues: [{ path: '', problem: 'wrong-form' }] }),
  BAD_REQUEST: new Refusal('invalid-input', { issues: [{ path: '', problem: 'wrong-form' }] }),
  UNSUPPORTED_MEDIA_TYPE: new Refusal('invalid-input', { issues: [{ path: '', problem: 'wrong-form' }] }),
  METHOD_NOT_SUPPORTED: new Refusal('not-found', { what: 'procedure' }),
  NOT_FOUND: new Refusal('not-found', { what: 'procedure' }),
};

function asRefusalOfTrpc(error: TRPCError): Refusal {
  // Our own errors come wrapped, those of a parser once more; what is inside decides.
  if (error.cause instanceof TRPCError || error.cause instanceof Refusal) return asRefusal(error.cause);
  return BY_TRPC[error.code] ?? (error.cause ? asRefusal(error.cause) : new Refusal('fault', {}));
}

export function toTrpcError(error: unknown): TRPCError {
  const refusal = asRefusal(error);
  return new TRPCError({
    code: TRPC_CODE[ERRORS[refusal.code].status] ?? 'INTERNAL_SERVER_ERROR',
    message: refusal.code,
    cause: error instanceof Error && refusal.code === 'fault' ? error : refusal,
  });
}

export function errorAnswer(cause: unknown, requestId: string): ErrorAnswer {
  const refusal = asRefusal(cause);
  return {
    code: refusal.code,
    class: ERRORS[refusal.code].class,
    ...(refusal.field ? { field: refusal.field } : {}),
    ...(refusal.data ? { data: refusal.data } : {}),
    requestId,
  };
}

/** The status of an answer of which every part failed alike, by the table of errors: tRPC's own numbers do not tell 503 from 500. */
export function statusOf(errors: readonly TRPCError[], parts: number): { status?: number } {
  const statuses = new Set(errors.map((error) => ERRORS[asRefusal(error).code].status));
  const [status] = statuses;
  return errors.length === parts && statuses.size === 1 && status ? { status } : {};
}
