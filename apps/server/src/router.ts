import { operations } from './features/operations.ts';
import { sessionProcedures } from './features/people/session-router.ts';
import { liveRouter } from './live/router.ts';
import { featureRouter, t } from './trpc/procedures.ts';

export const appRouter = t.router({
  people: t.mergeRouters(t.router({ ...sessionProcedures }), featureRouter(operations.people)),
  files: featureRouter(operations.files),
  plants: featureRouter(operations.plants),
  sources: featureRouter(operations.sources),
  stock: featureRouter(operations.stock),
  potLife: featureRouter(operations.potLife),
  propagation: featureRouter(operations.propagation),
  promises: featureRouter(operations.promises),
  gardens: featureRouter(operations.gardens),
  planning: featureRouter(operations.planning),
  live: liveRouter,
});

export type AppRouter = typeof appRouter;
