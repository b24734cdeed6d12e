import type { ReadContext } from '../../../trpc/operation.ts';
import { loadScope } from '../allocation/load.ts';
import { countOpenLines } from '../allocation/store.ts';
import { solver } from './solver.ts';

const FEW_LINES = 100;

/**
 * Looks ahead at a plan of everything, in a transaction that only reads. What it answers solves a large one before the
 * command takes the nursery's lock; there it is taken only if nothing moved in between.
 */
export async function foreseePlan(context: ReadContext): Promise<() => Promise<void>> {
  // So few lines make no large scope, and reading all of them twice a day would be for nothing.
  if ((await countOpenLines(context)) < FEW_LINES) return async () => {};
  const scope = await loadScope(context, { all: true });
  return async () => {
    if (solver.isLarge(scope)) await solver.foresee(scope);
  };
}
