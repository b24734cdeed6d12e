/** The pages of settings. Rules and windows stand with the plants in the address, since plants grow by them. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/rules',
    component: lazyRouteComponent(() => import('./rules/rules-page.tsx'), 'RulesPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/windows',
    component: lazyRouteComponent(() => import('./windows/windows-page.tsx'), 'WindowsPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/substitutes',
    component: lazyRouteComponent(() => import('./substitutes/substitutes-page.tsx'), 'SubstitutesPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/people',
    component: lazyRouteComponent(() => import('./people/people-page.tsx'), 'PeoplePage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/settings',
    component: lazyRouteComponent(() => import('./nursery-page.tsx'), 'NurseryPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/settings/own',
    component: lazyRouteComponent(() => import('./own/own-page.tsx'), 'OwnPage'),
  }),
];
