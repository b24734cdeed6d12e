import { operations } from './features/operations.ts';
import { sessionProcedures } from './features/people/session-router.ts';
import { featureRouter, t } from './trpc/procedures.ts';

export const appRouter = t.router({
  people: t.router({ ...sessionProcedures }),
  stock: featureRouter(operations.stock),
});

export type AppRouter = typeof appRouter;
