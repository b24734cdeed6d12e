/** The pages of propagation: the list, the form that starts a batch, and a batch's own page. */
import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { signedInRoute } from '../../routes/root.tsx';

export const routes = [
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation',
    component: lazyRouteComponent(() => import('./propagation-page.tsx'), 'PropagationPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/start',
    component: lazyRouteComponent(() => import('./start/start-batch-page.tsx'), 'StartBatchPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/$batchId',
    component: lazyRouteComponent(() => import('./batch/batch-page.tsx'), 'BatchPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/protocols',
    component: lazyRouteComponent(() => import('./protocols/list/protocols-page.tsx'), 'ProtocolsPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/protocols/new',
    component: lazyRouteComponent(() => import('./protocols/form/new-protocol-page.tsx'), 'NewProtocolPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/protocols/$protocolId',
    component: lazyRouteComponent(() => import('./protocols/page/protocol-page.tsx'), 'ProtocolPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/protocols/$protocolId/revise',
    component: lazyRouteComponent(() => import('./protocols/form/revise-protocol-page.tsx'), 'ReviseProtocolPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/record',
    component: lazyRouteComponent(() => import('./record/list/record-page.tsx'), 'RecordPage'),
  }),
  createRoute({
    getParentRoute: () => signedInRoute,
    path: '/propagation/record/$plantId',
    component: lazyRouteComponent(() => import('./record/plant/plant-record-page.tsx'), 'PlantRecordPage'),
  }),
];
