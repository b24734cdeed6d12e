/** A failed request, as screens speak of it: one of the server's errors, or no answer at all. */
import { ERRORS, type ErrorClass, type ErrorCode, type InputIssue } from '@rootclock/contracts';

export interface Failure {
  /** `no-answer` is the browser's own: nobody knows what the server did. */
  code: ErrorCode | 'no-answer';
  class: ErrorClass;
  field?: string;
  data?: Record<string, unknown>;
  requestId?: string;
}

/** Thrown by a command's `send` and by reads; carries what the screen needs to say. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
  constructor(readonly failure: Failure) {
    super(failure.code);
  }
}

/** An answer that is no JSON, and so none of our server's; thrown by the way of requests before its content is read. */
export class UnsignedAnswer extends Error {
  override readonly name = 'UnsignedAnswer';
  constructor(readonly status: number) {
    super(`answered ${status} by a stranger`);
  }
}

export const NO_ANSWER: Failure = { code: 'no-answer', class: 'retry' };

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
const isErrorCode = (value: unknown): value is ErrorCode => typeof value === 'string' && Object.hasOwn(ERRORS, value);

/** A proxy that finds an entry too large finds it so for ever: it must not hold up what comes after it. */
const TOO_LARGE = 413;

/**
 * Reads any error thrown by the client. What the server has not signed with one of its own codes (a proxy's page, a free network's door, a
 * cut connection, a time-out) says nothing about the outcome and counts as no answer, whatever its status.
 */
export function readFailure(error: unknown): Failure {
  const thrown = causeOf(error);
  if (thrown instanceof CommandError) return thrown.failure;
  const signed = signedIn(error);
  if (signed) {
    return {
      code: signed.code,
      class: ERRORS[signed.code].class,
      ...(typeof signed.told['field'] === 'string' ? { field: signed.told['field'] } : {}),
      ...(isRecord(signed.told['data']) ? { data: signed.told['data'] } : {}),
      ...(typeof signed.told['requestId'] === 'string' ? { requestId: signed.told['requestId'] } : {}),
    };
  }
  return statusOf(error) === TOO_LARGE ? { code: 'fault', class: 'fault' } : NO_ANSWER;
}

/** The client wraps what the way of requests throws. */
const causeOf = (error: unknown): unknown =>
  error instanceof CommandError || !(error instanceof Error) ? error : (error.cause ?? error);

const responseOf = (error: unknown): Record<string, unknown> | undefined => {
  const meta = isRecord(error) ? error['meta'] : undefined;
  return isRecord(meta) ? meta : undefined;
};

/** The server's own code: in a procedure's answer, or in that of a hook or page, which also names its request. */
function signedIn(error: unknown): { code: ErrorCode; told: Record<string, unknown> } | null {
  const data = isRecord(error) ? error['data'] : undefined;
  if (isRecord(data) && isErrorCode(data['code'])) return { code: data['code'], told: data };
  const page = responseOf(error)?.['responseJSON'];
  return isRecord(page) && isErrorCode(page['code']) && typeof page['requestId'] === 'string'
    ? { code: page['code'], told: page }
    : null;
}

function statusOf(error: unknown): number | null {
  const cause = causeOf(error);
  if (cause instanceof UnsignedAnswer) return cause.status;
  const response = responseOf(error)?.['response'];
  return isRecord(response) && typeof response['status'] === 'number' ? response['status'] : null;
}

/** The issues of an input failure; empty for every other. */
export function issuesIn(failure: Failure): InputIssue[] {
  const issues = failure.code === 'invalid-input' ? failure.data?.['issues'] : undefined;
  return Array.isArray(issues)
    ? issues.filter((issue): issue is InputIssue => isRecord(issue) && typeof issue['path'] === 'string')
    : [];
}
