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

export const NO_ANSWER: Failure = { code: 'no-answer', class: 'retry' };

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
const isErrorCode = (value: unknown): value is ErrorCode => typeof value === 'string' && Object.hasOwn(ERRORS, value);

/** Statuses with which something between us and the server answers in its stead. */
const NOBODY_HOME = [408, 429, 502, 503, 504];

/**
 * Reads any error thrown by the client. What the server has not signed with one of its own codes (a proxy's page, a cut
 * connection, a time-out) says nothing about the outcome and counts as no answer, except a plain client error.
 */
export function readFailure(error: unknown): Failure {
  if (error instanceof CommandError) return error.failure;
  // Procedures sign inside their answer; what is refused before one is reached is signed as the answer itself.
  const data = [isRecord(error) ? error['data'] : undefined, metaOf(error)?.['responseJSON']].find((told) => isRecord(told) && isErrorCode(told['code']));
  if (isRecord(data) && isErrorCode(data['code'])) {
    return {
      code: data['code'],
      class: ERRORS[data['code']].class,
      ...(typeof data['field'] === 'string' ? { field: data['field'] } : {}),
      ...(isRecord(data['data']) ? { data: data['data'] } : {}),
      ...(typeof data['requestId'] === 'string' ? { requestId: data['requestId'] } : {}),
    };
  }
  const status = statusOf(error);
  if (status === 403) return { code: 'forged-request', class: 'access' };
  if (status !== null && status >= 400 && status < 500 && !NOBODY_HOME.includes(status)) return { code: 'fault', class: 'fault' };
  return NO_ANSWER;
}

function metaOf(error: unknown): Record<string, unknown> | undefined {
  const meta = isRecord(error) ? error['meta'] : undefined;
  return isRecord(meta) ? meta : undefined;
}

function statusOf(error: unknown): number | null {
  const response = metaOf(error)?.['response'];
  return isRecord(response) && typeof response['status'] === 'number' ? response['status'] : null;
}

/** The issues of an input failure; empty for every other. */
export function issuesIn(failure: Failure): InputIssue[] {
  const issues = failure.code === 'invalid-input' ? failure.data?.['issues'] : undefined;
  return Array.isArray(issues) ? issues.filter((issue): issue is InputIssue => isRecord(issue) && typeof issue['path'] === 'string') : [];
}
