import type { AppRouter } from '@rootclock/server/router';
import type { inferRouterOutputs } from '@trpc/server';

/** A source as its page reads it, with what came of it. */
export type SourceStory = inferRouterOutputs<AppRouter>['sources']['readSource'];
