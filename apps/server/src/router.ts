import { operations } from './features/operations.ts';
import { sessionProcedures } from './features/people/session-router.ts';
import { featureRouter, t } from './trpc/procedures.ts';

export const appRouter = t.router({
  people: t.router({ ...sessionProcedures }),
  plants: featureRouter(operations.plants),
  sources: featureRouter(operations.sources),
  stock: featureRouter(operations.stock),
  propagation: featureRouter(operations.propagation),
});

export type AppRouter = typeof appRouter;
