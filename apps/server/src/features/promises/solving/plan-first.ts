import { ReckonFirst } from '../../../db/writing/reckon-first.ts';
import { later } from '../../../later.ts';
import { refuse } from '../../../refusal.ts';
import type { Scope, ScopeReservation } from '../allocation/scope.ts';
import { NotSolvedInTime, solver } from './solver.ts';

/** As long as a person waits for an answer; what is solved by then or later is found when the same command is sent again. */
const PERSON_WAITS_MS = 20_000;

/**
 * The plan of a scope for a command that cannot be answered without it. A large one is solved outside the transaction, where nobody is
 * locked out, and the command runs again; it is solved once more where anything moved in between.
 */
export function planFirst(scope: Scope): ScopeReservation[] {
  const plan = solver.planNow(scope);
  if (plan === null) throw new ReckonFirst(() => solveWhileWaiting(scope));
  return plan;
}

async function solveWhileWaiting(scope: Scope): Promise<void> {
  const solving = solver.foresee(scope).catch((error: unknown) => {
    if (!(error instanceof NotSolvedInTime)) throw error;
    refuse('too-many-lines-share', {
      lines: scope.lines.length,
      plants: new Set(scope.supplies.map(({ item }) => item)).size,
    });
  });
  let callOff = () => {};
  const waited = new Promise<void>((_, reject) => {
    callOff = later(PERSON_WAITS_MS, () => reject(ReckonFirst.tooOften()));
  });
  // Whoever waits no longer leaves it to be solved for the next time.
  solving.catch(() => {});
  try {
    await Promise.race([solving, waited]);
  } finally {
    callOff();
  }
}
