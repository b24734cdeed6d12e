/** The pages of people that need no session: sign-in, and the first visit to an empty server. */
import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { queryClient, trpc } from '../../lib/api/index.ts';
import { paths } from '../../lib/paths.ts';
import { rootRoute } from '../../routes/root.tsx';

const setup = () => queryClient.fetchQuery(trpc.people.setupState.queryOptions());

export const openRoutes = [
  createRoute({
    getParentRoute: () => rootRoute,
    path: '/sign-in',
    validateSearch: (search: Record<string, unknown>): { next?: string } =>
      typeof search['next'] === 'string' ? { next: search['next'] } : {},
    beforeLoad: async () => {
      if ((await setup()).needsFirstOwner) throw redirect({ to: paths.firstOwner() });
    },
    component: lazyRouteComponent(() => import('./sign-in-page.tsx'), 'SignInPage'),
  }),
  createRoute({
    getParentRoute: () => rootRoute,
    path: '/begin',
    beforeLoad: async () => {
      if (!(await setup()).needsFirstOwner) throw redirect({ to: paths.signIn() });
    },
    component: lazyRouteComponent(() => import('./first-owner-page.tsx'), 'FirstOwnerPage'),
  }),
];
