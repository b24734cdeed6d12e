/** The tasks' page. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../../routes/root.tsx';

export const taskRoutes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/tasks',
    component: lazyRouteComponent(() => import('./tasks-page.tsx'), 'TasksPage'),
  }),
];
