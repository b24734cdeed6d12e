/** The pages of gardens: orders, pull lists, planting, clients, sites and kits. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

const getParentRoute = () => signedInRoute;

export const routes = [
  createRoute({
    getParentRoute,
    path: '/gardens',
    component: lazyRouteComponent(() => import('../promises/orders/orders-page.tsx'), 'OrdersPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/new',
    component: lazyRouteComponent(() => import('../promises/orders/new-order-page.tsx'), 'NewOrderPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/to-pull',
    component: lazyRouteComponent(() => import('./pull/to-pull-page.tsx'), 'ToPullPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/orders/$orderId',
    component: lazyRouteComponent(() => import('../promises/order/order-page.tsx'), 'OrderPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/orders/$orderId/pull',
    component: lazyRouteComponent(() => import('./pull/pull-page.tsx'), 'PullPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/orders/$orderId/plant',
    component: lazyRouteComponent(() => import('./planting/plant-page.tsx'), 'PlantPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/orders/$orderId/hand-over',
    component: lazyRouteComponent(() => import('./planting/hand-over-page.tsx'), 'HandOverPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/orders/$orderId/bring-back',
    component: lazyRouteComponent(() => import('./planting/return-page.tsx'), 'ReturnPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/what-if',
    component: lazyRouteComponent(() => import('../promises/what-if/what-if-page.tsx'), 'WhatIfPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/clients',
    component: lazyRouteComponent(() => import('./clients/clients-page.tsx'), 'ClientsPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/clients/$clientId',
    component: lazyRouteComponent(() => import('./clients/client-page.tsx'), 'ClientPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/kits',
    component: lazyRouteComponent(() => import('../orders/kits/kits-page.tsx'), 'KitsPage'),
  }),
  createRoute({
    getParentRoute,
    path: '/gardens/sites/$siteId',
    component: lazyRouteComponent(() => import('./clients/site-page.tsx'), 'SitePage'),
  }),
];
