import type { Operation } from '../trpc/operation.ts';
import { plantsOperations } from './plants/operations.ts';
import { propagationOperations } from './propagation/operations.ts';
import { sourcesOperations } from './sources/operations.ts';
import { stockOperations } from './stock/operations.ts';
import { reverseEntry } from './stock/reversal/commands/reverse-entry.ts';
import { undos } from './undo.ts';

/** Every signed-in operation by feature: routers, role tests and the API description all derive from this one list. */
export const operations = {
  plants: plantsOperations,
  sources: sourcesOperations,
  stock: { ...stockOperations, reverseEntry: reverseEntry(undos) },
  propagation: propagationOperations,
} satisfies Record<string, Record<string, Operation>>;
