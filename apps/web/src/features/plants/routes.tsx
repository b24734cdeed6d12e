/** The pages of plants: the list, a plant's own page with its form, and the containers. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants',
    component: lazyRouteComponent(() => import('./list/plants-page.tsx'), 'PlantsPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/add',
    component: lazyRouteComponent(() => import('./form/add-plant-page.tsx'), 'AddPlantPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/containers',
    component: lazyRouteComponent(() => import('./containers/containers-page.tsx'), 'ContainersPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/$plantId',
    component: lazyRouteComponent(() => import('./page/plant-page.tsx'), 'PlantPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/plants/$plantId/edit',
    component: lazyRouteComponent(() => import('./form/edit-plant-page.tsx'), 'EditPlantPage'),
  }),
];
