/** The shell's own pages. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from './root.tsx';

export const shellRoutes = [
  createRoute({ getParentRoute: () => signedInRoute, path: '/more', component: lazyRouteComponent(() => import('../shell/more-page.tsx'), 'MorePage') }),
  createRoute({ getParentRoute: () => signedInRoute, path: '/outbox', component: lazyRouteComponent(() => import('../shell/outbox-page.tsx'), 'OutboxPage') }),
];
