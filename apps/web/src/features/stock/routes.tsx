/** The pages of the stock and of its sources; those of lots come from their own folder. */
import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { paths } from '../../lib/paths.ts';
import { signedInRoute } from '../../routes/root.tsx';
import { lotRoutes } from './lots/routes.ts';

const page = { getParentRoute: () => signedInRoute };

export const routes = [
  ...lotRoutes,
  createRoute({
    ...page,
    path: '/stock',
    beforeLoad: () => {
      throw redirect({ to: paths.board(), replace: true });
    },
  }),
  createRoute({
    ...page,
    path: '/stock/lots',
    component: lazyRouteComponent(() => import('./table/stock-table-page.tsx'), 'StockTablePage'),
  }),
  createRoute({
    ...page,
    path: '/stock/places',
    component: lazyRouteComponent(() => import('./places/places-page.tsx'), 'PlacesPage'),
  }),
  createRoute({
    ...page,
    path: '/stock/places/$placeId',
    component: lazyRouteComponent(() => import('./places/place-page.tsx'), 'PlacePage'),
  }),
  createRoute({
    ...page,
    path: '/stock/opening',
    component: lazyRouteComponent(() => import('./intake/opening/opening-page.tsx'), 'OpeningPage'),
  }),
  createRoute({
    ...page,
    path: '/stock/receive',
    component: lazyRouteComponent(() => import('./intake/bought/bought-page.tsx'), 'BoughtPage'),
  }),
  createRoute({
    ...page,
    path: '/sources',
    component: lazyRouteComponent(() => import('./sources/sources-page.tsx'), 'SourcesPage'),
  }),
  createRoute({
    ...page,
    path: '/sources/$sourceId',
    component: lazyRouteComponent(() => import('./sources/source-page.tsx'), 'SourcePage'),
  }),
];
