import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/',
    component: lazyRouteComponent(() => import('./today-page.tsx'), 'TodayPage'),
  }),
];
