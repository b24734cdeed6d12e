import { allocate, keepCurrent } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadScope } from '../load.ts';
import { preparePlan } from '../plan.ts';
import type { Scope, ScopeReservation } from '../scope.ts';
import { countOpenLines } from '../store.ts';
import { allocator, NotSolvedInTime } from './allocator.ts';

const FEW_LINES = 100;

/** What a command has left to do after its plan: what changed is stored, the command logged, all of it tried and committed. */
const AFTERWARDS_MS = 2_000;

interface Planned {
  reservations: ScopeReservation[];
  /** False where there was no time to solve it: then what lines hold stays as far as it can, and nothing new is given to anybody. */
  isSolved: boolean;
}

/** The reservations as they should be; what is large is solved in a thread of its own, so that others' requests are answered meanwhile. */
export async function planApart(scope: Scope, msLeft: () => number): Promise<Planned> {
  const { instance, reservationsOf } = preparePlan(scope);
  try {
    const solution = allocator.isLarge(instance)
      ? await allocator.solve(instance, msLeft() - AFTERWARDS_MS)
      : allocate(instance).assignments;
    return { reservations: reservationsOf(solution), isSolved: true };
  } catch (error) {
    if (!(error instanceof NotSolvedInTime)) throw error;
    return { reservations: reservationsOf(keepCurrent(instance)), isSolved: false };
  }
}

/**
 * Looks ahead at the plan of a day that is about to begin, in a transaction that only reads. What it answers solves a large one before the
 * command takes the nursery's lock; there it is solved again only if anything moved in between.
 */
export async function foreseePlan(context: ReadContext): Promise<() => Promise<void>> {
  // So few lines make no large instance, and reading all of them twice a day would be for nothing.
  if ((await countOpenLines(context)) < FEW_LINES) return async () => {};
  const { instance } = preparePlan(await loadScope(context, { all: true }));
  return async () => {
    if (allocator.isLarge(instance)) await allocator.foresee(instance);
  };
}
