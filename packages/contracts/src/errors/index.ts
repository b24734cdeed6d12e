import { clientsErrors } from './clients.ts';
import { filesErrors } from './files.ts';
import { gardensErrors } from './gardens.ts';
import { generalErrors } from './general.ts';
import { ordersErrors } from './orders.ts';
import { peopleErrors } from './people.ts';
import { planningErrors } from './planning.ts';
import { plantsErrors } from './plants.ts';
import { potLifeErrors } from './pot-life.ts';
import { promisesErrors } from './promises.ts';
import { propagationErrors } from './propagation.ts';
import { sourcesErrors } from './sources.ts';
import { stockInErrors } from './stock-in.ts';
import { stockErrors } from './stock.ts';

export * from './kind.ts';
export type { Edited, InputIssue } from './general.ts';
export type { LineShortening } from './promises.ts';

/** The one table of errors, for server and web: an error that is not here cannot be raised, one that is must have a sentence for people. */
export const ERRORS = {
  ...generalErrors,
  ...peopleErrors,
  ...filesErrors,
  ...plantsErrors,
  ...potLifeErrors,
  ...sourcesErrors,
  ...stockErrors,
  ...stockInErrors,
  ...propagationErrors,
  ...clientsErrors,
  ...ordersErrors,
  ...promisesErrors,
  ...gardensErrors,
  ...planningErrors,
};
export type ErrorCode = keyof typeof ERRORS;
export type ErrorData<Code extends ErrorCode> = NonNullable<(typeof ERRORS)[Code]['data']>;

/** What the server answers in `error.data` when a procedure fails. */
export interface ErrorAnswer {
  code: ErrorCode;
  class: (typeof ERRORS)[ErrorCode]['class'];
  /** The field of the input that the error belongs to, if it is one. */
  field?: string;
  data?: Record<string, unknown>;
  requestId: string;
}
