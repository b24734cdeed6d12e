/** The roots that every feature hangs its routes on: `rootRoute` for pages without a session, `signedInRoute` for all others. */
import { createRootRoute, createRoute, Outlet, redirect } from '@tanstack/react-router';
import { queryClient, readFailure, trpc } from '../lib/api/index.ts';
import { paths } from '../lib/paths.ts';
import { enterSession } from '../lib/session-turns.ts';
import { Shell } from '../shell/shell.tsx';
import { BrokenPage } from '../shell/trouble-pages.tsx';
import { Skeleton, ToastRegion } from '../ui/feedback/index.ts';

export const rootRoute = createRootRoute({
  component: () => (
    <>
      <Outlet />
      <ToastRegion />
    </>
  ),
});

export const signedInRoute = createRoute({
  getParentRoute: () => rootRoute,
  id: 'signed-in',
  component: Shell,
  pendingComponent: Skeleton,
  errorComponent: BrokenPage,
  beforeLoad: async ({ location }) => {
    try {
      enterSession(await queryClient.ensureQueryData(trpc.people.me.queryOptions()));
    } catch (error) {
      if (readFailure(error).code !== 'not-signed-in') throw error;
      throw redirect({ to: paths.signIn(), search: { next: location.href } });
    }
  },
});
