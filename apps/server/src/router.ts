import { onceOfGardens } from './features/moved.ts';
import { operations } from './features/operations.ts';
import { sessionProcedures } from './features/people/session-router.ts';
import { liveRouter } from './live/router.ts';
import { entriesRouter } from './trpc/entries.ts';
import { featureRouter, t } from './trpc/procedures.ts';

const features = t.router({
  people: t.mergeRouters(t.router({ ...sessionProcedures }), featureRouter(operations.people)),
  files: featureRouter(operations.files),
  plants: featureRouter(operations.plants),
  sources: featureRouter(operations.sources),
  stock: featureRouter(operations.stock),
  potLife: featureRouter(operations.potLife),
  propagation: featureRouter(operations.propagation),
  clients: featureRouter(operations.clients),
  orders: featureRouter(operations.orders),
  promises: featureRouter(operations.promises),
  gardens: featureRouter({ ...onceOfGardens, ...operations.gardens }),
  planning: featureRouter(operations.planning),
  live: liveRouter,
});

/** Everything that can be asked. What waited on a device runs through the same procedures as what is sent alone. */
export const appRouter = t.mergeRouters(features, t.router({ outbox: entriesRouter(features) }));

export type AppRouter = typeof appRouter;
