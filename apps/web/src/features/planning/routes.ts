/** The pages of planning; tasks register their own. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/planning',
    component: lazyRouteComponent(() => import('./plan/plan-page.tsx'), 'PlanPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/planning/demand',
    component: lazyRouteComponent(() => import('./demand/demand-page.tsx'), 'DemandPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/planning/outlook',
    component: lazyRouteComponent(() => import('./outlook/outlook-page.tsx'), 'OutlookPage'),
  }),
];
