import type { Operation } from '../trpc/operation.ts';
import { stockOperations } from './stock/operations.ts';

/** Every signed-in operation by feature: routers, role tests and the API description all derive from this one list. */
export const operations = {
  stock: stockOperations,
} satisfies Record<string, Record<string, Operation>>;
