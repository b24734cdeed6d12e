import { NoAnswer } from './no-answer.ts';

/** What PostgreSQL said of a failed statement, wherever Prisma put it. */
export interface DatabaseFailure {
  sqlState: string;
  constraint: string;
  message: string;
}

interface DriverCause {
  originalCode?: string;
  code?: string;
  originalMessage?: string;
  message?: string;
  constraint?: unknown;
}

/**
 * Reads SQLSTATE and constraint from an error of Prisma with adapter-pg, or null when the database did not answer with one.
 * A serialization failure at COMMIT comes bare, every other one wrapped, so all places are looked at here and nowhere else.
 */
export function databaseFailure(error: unknown): DatabaseFailure | null {
  const shaped = error as { cause?: DriverCause; meta?: { driverAdapterError?: { cause?: DriverCause } } } | null;
  const cause = shaped?.meta?.driverAdapterError?.cause ?? shaped?.cause;
  const sqlState = cause?.originalCode ?? cause?.code;
  if (!sqlState || !/^[0-9A-Z]{5}$/.test(sqlState)) return null;
  const message = cause?.originalMessage ?? cause?.message ?? '';
  return { sqlState, constraint: constraintName(cause?.constraint) ?? quotedConstraint(message), message };
}

function constraintName(constraint: unknown): string | null {
  if (typeof constraint === 'string') return constraint;
  const index = (constraint as { index?: unknown } | null | undefined)?.index;
  return typeof index === 'string' ? index : null;
}

const quotedConstraint = (message: string) => /constraint "([^"]+)"/.exec(message)?.[1] ?? '';

const RETRIED = new Set(['40001', '40P01', '55P03']);
export const isWorthRetrying = (failure: DatabaseFailure | null) => failure !== null && RETRIED.has(failure.sqlState);

/**
 * States in which the statement was sound and the database could not: connection (08), transaction undone (40), means used up (53),
 * stopped by its operator or a time limit (57), its machine failed (58, XX000), waited or idled too long (55P03, 25P03, 25P04), a
 * standby (25006), or another connection put beneath ours (26000).
 */
const PASSING = /^(08|40|53|57|58)|^(25006|25P03|25P04|26000|55P03|XX000)$/;

/** Whether the same command should simply be sent again: the database did not answer, did not finish, or could not work just then. */
export function isOutcomeUnknown(error: unknown): boolean {
  if (error instanceof NoAnswer) return true;
  // Prisma's own word for a transaction that was not begun or not ended in time, or was cut short by a stop of the server.
  if ((error as { code?: unknown } | null)?.code === 'P2028') return true;
  return PASSING.test(databaseFailure(error)?.sqlState ?? '');
}
