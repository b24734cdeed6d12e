/** The board of pot life; it stands among the views of the stock. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/stock/board',
    component: lazyRouteComponent(() => import('./board-page.tsx'), 'BoardPage'),
  }),
];
