// What the driver throws, sorted at the one place where it is known to come from the driver.
import pg from 'pg';

/** The database gave no answer: the connection broke, was closed, or could not be made. Nobody knows what became of the statement. */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer';
  constructor(cause: unknown) {
    super(`the database gave no answer: ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
  }
}

/** An answer of PostgreSQL has an SQLSTATE. With one that ends the session, the connection is gone whatever the state says. */
const isAnswer = (error: unknown) =>
  error instanceof pg.DatabaseError && error.severity !== 'FATAL' && error.severity !== 'PANIC';

/** Mistakes of the program, met while values were made ready for the driver or read from it. */
export const isMistake = (error: unknown) =>
  [TypeError, RangeError, SyntaxError, ReferenceError].some((kind) => error instanceof kind);

/**
 * Tells a lost connection from all else. The driver has a dozen sentences for it, and they change with the moment at which the
 * connection broke; so what counts is not the sentence but that it comes from the driver and is no answer of PostgreSQL.
 */
export async function heard<Answer>(answer: Promise<Answer>): Promise<Answer> {
  try {
    return await answer;
  } catch (error) {
    throw isAnswer(error) || isMistake(error) ? error : new NoAnswer(error);
  }
}
