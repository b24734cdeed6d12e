/**
 * The five classes of errors. input: what was sent is wrong. refusal: expected, with the numbers and the next step.
 * access: who asks may not. retry: the outcome is unknown, send the same command id again. fault: our own, with a request id only.
 */
export const ERROR_CLASSES = ['input', 'refusal', 'access', 'retry', 'fault'] as const;
export type ErrorClass = (typeof ERROR_CLASSES)[number];

/** One error: its class, its HTTP status, and the type of the numbers and names its sentence needs. */
export interface ErrorKind<Data> {
  class: ErrorClass;
  status: 400 | 401 | 403 | 404 | 409 | 413 | 422 | 429 | 500 | 503;
  /** Never set: it carries the type of the data only. */
  data?: Data;
}

export type NoData = Record<string, never>;

export const errorKind = <Data = NoData>(
  errorClass: ErrorClass,
  status: ErrorKind<Data>['status'],
): ErrorKind<Data> => ({ class: errorClass, status });
