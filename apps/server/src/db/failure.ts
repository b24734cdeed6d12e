import pg from 'pg';
import { NoAnswer } from './no-answer.ts';

/** What PostgreSQL said of a failed statement. */
export interface DatabaseFailure {
  sqlState: string;
  constraint: string;
  message: string;
}

/** SQLSTATE and constraint of an error, or null when the database did not answer with one. */
export function databaseFailure(error: unknown): DatabaseFailure | null {
  const answer = error instanceof NoAnswer ? error.cause : error;
  if (!(answer instanceof pg.DatabaseError) || answer.code === undefined) return null;
  return { sqlState: answer.code, constraint: answer.constraint ?? '', message: answer.message };
}

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
  return error instanceof NoAnswer || PASSING.test(databaseFailure(error)?.sqlState ?? '');
}
