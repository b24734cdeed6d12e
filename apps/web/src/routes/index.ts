/**
 * Every page of the app. A feature exports `routes` from `features/<feature>/routes.tsx` (children of `signedInRoute`, each with a
 * lazily loaded component) and is listed here; only pages that need no session hang on the root itself.
 */
import { createRouter } from '@tanstack/react-router';
import { routes as gardensRoutes } from '../features/gardens/routes.tsx';
import { openRoutes } from '../features/people/routes.tsx';
import { routes as planningRoutes } from '../features/planning/routes.ts';
import { taskRoutes } from '../features/planning/tasks/routes.ts';
import { routes as plantsRoutes } from '../features/plants/routes.tsx';
import { routes as potLifeRoutes } from '../features/pot-life/routes.tsx';
import { routes as propagationRoutes } from '../features/propagation/routes.tsx';
import { routes as settingsRoutes } from '../features/settings/routes.tsx';
import { routes as stockRoutes } from '../features/stock/routes.tsx';
import { routes as todayRoutes } from '../features/today/routes.tsx';
import { BrokenPage, NotFoundPage } from '../shell/trouble-pages.tsx';
import { Skeleton } from '../ui/feedback/index.ts';
import { rootRoute, signedInRoute } from './root.tsx';
import { shellRoutes } from './shell-routes.tsx';

const routeTree = rootRoute.addChildren([
  ...openRoutes,
  signedInRoute.addChildren([
    ...shellRoutes,
    ...todayRoutes,
    ...taskRoutes,
    ...planningRoutes,
    ...potLifeRoutes,
    ...plantsRoutes,
    ...settingsRoutes,
    ...stockRoutes,
    ...propagationRoutes,
    ...gardensRoutes,
  ]),
]);

export const router = createRouter({
  routeTree,
  scrollRestoration: true,
  defaultPreload: 'intent',
  // The cache of reads decides what is fresh; a preloaded page must not bring an older one.
  defaultPreloadStaleTime: 0,
  defaultPendingComponent: Skeleton,
  defaultErrorComponent: BrokenPage,
  defaultNotFoundComponent: NotFoundPage,
});
