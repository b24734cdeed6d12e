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
