import type { Operation } from '../trpc/operation.ts';
import { clientsOperations } from './clients/operations.ts';
import { filesOperations } from './files/operations.ts';
import { gardensOperations } from './gardens/operations.ts';
import { ordersOperations } from './orders/operations.ts';
import { peopleOperations } from './people/operations.ts';
import { planningOperations } from './planning/operations.ts';
import { plantsOperations } from './plants/operations.ts';
import { potLifeOperations } from './pot-life/operations.ts';
import { loadReference } from './pot-life/rules/commands/load-reference.ts';
import { promisesOperations } from './promises/operations.ts';
import { propagationOperations } from './propagation/operations.ts';
import { sourcesOperations } from './sources/operations.ts';
import { stockOperations } from './stock/operations.ts';
import { reverseEntry } from './stock/reversal/commands/reverse-entry.ts';
import { undos } from './undo.ts';

/** Every signed-in operation by feature: routers, role tests and the API description all derive from this one list. */
export const operations = {
  people: peopleOperations,
  files: filesOperations,
  plants: { ...plantsOperations, loadReference },
  sources: sourcesOperations,
  stock: { ...stockOperations, reverseEntry: reverseEntry(undos) },
  potLife: potLifeOperations,
  propagation: propagationOperations,
  clients: clientsOperations,
  orders: ordersOperations,
  promises: promisesOperations,
  gardens: gardensOperations,
  planning: planningOperations,
} satisfies Record<string, Record<string, Operation>>;
