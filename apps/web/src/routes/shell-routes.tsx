/** The shell's own pages, and last of all every address that leads nowhere: inside the frame, so that there is a way on. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { NotFoundPage } from '../shell/trouble-pages.tsx';
import { signedInRoute } from './root.tsx';

export const shellRoutes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/more',
    component: lazyRouteComponent(() => import('../shell/more-page.tsx'), 'MorePage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/outbox',
    component: lazyRouteComponent(() => import('../shell/outbox-page.tsx'), 'OutboxPage'),
  }),
  createRoute({ getParentRoute: () => signedInRoute, path: '/$', component: NotFoundPage }),
];
