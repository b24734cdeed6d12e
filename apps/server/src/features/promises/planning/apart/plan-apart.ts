import { allocate } from '@rootclock/domain';
import type { ReadContext } from '../../../../trpc/operation.ts';
import { loadScope } from '../load.ts';
import { preparePlan } from '../plan.ts';
import type { Scope, ScopeReservation } from '../scope.ts';
import { countOpenLines } from '../store.ts';
import { allocator } from './allocator.ts';

const FEW_LINES = 100;

/** The reservations as they should be; what is large is solved in a thread of its own, so that others' requests are answered meanwhile. */
export async function planApart(scope: Scope): Promise<ScopeReservation[]> {
  const { instance, reservationsOf } = preparePlan(scope);
  return reservationsOf(allocator.isLarge(instance) ? await allocator.solve(instance) : allocate(instance).assignments);
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
