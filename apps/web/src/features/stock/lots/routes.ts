/** The page of a lot, for the routes of stock. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../../routes/root.tsx';

export const lotRoutes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/stock/lots/$lotId',
    component: lazyRouteComponent(() => import('./lot-page.tsx'), 'LotPage'),
  }),
];
